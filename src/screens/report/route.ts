import { defineRoute } from '../../ui/route.ts';

export const routes = [defineRoute({ path: '/block/:id/report', title: 'Report', load: () => import('./screen.tsx') })];
