import { defineRoute } from '../../ui/route.ts';

export const routes = [
  defineRoute({ path: '/block/:id/walk', title: 'The walk', load: () => import('./screen.tsx') }),
  defineRoute({ path: '/block/:id/walk/:station', title: 'The walk', load: () => import('./screen.tsx') }),
];
