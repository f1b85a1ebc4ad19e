import { defineRoute } from '../../ui/route.ts';

export const routes = [defineRoute({ path: '/haggle/:id', title: 'Haggle', load: () => import('./screen.tsx') })];
