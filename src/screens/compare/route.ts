import { defineRoute } from '../../ui/route.ts';

export const routes = [
  defineRoute({ path: '/block/:id/compare', title: 'Before and after', load: () => import('./screen.tsx') }),
];
