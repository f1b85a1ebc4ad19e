import { defineRoute } from '../../ui/route.ts';

export const routes = [
  defineRoute({
    path: '/block/:id/photo/:photo/measure',
    title: 'Mark and measure',
    load: () => import('./screen.tsx'),
  }),
];
