import { defineRoute } from '../../ui/route.ts';

export const routes = [defineRoute({ path: '/block/:id/camera', title: 'Camera', load: () => import('./screen.tsx') })];
