import { defineRoute } from '../../ui/route.ts';

export const routes = [
  defineRoute({ path: '/block/:id', title: 'Block', load: () => import('./screen.tsx') }),
  defineRoute({ path: '/block/:id/photo/:photo', title: 'Photograph', load: () => import('./photo-screen.tsx') }),
];
