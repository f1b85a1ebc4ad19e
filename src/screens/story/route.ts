import { defineRoute } from '../../ui/route.ts';

export const routes = [
  defineRoute({ path: '/block/:id/story', title: 'Story and marks', load: () => import('./screen.tsx') }),
];
