import { defineRoute } from '../../ui/route.ts';

export const routes = [defineRoute({ path: '/keeping', title: 'Keeping', load: () => import('./screen.tsx') })];
