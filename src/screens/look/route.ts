import { defineRoute } from '../../ui/route.ts';

export const routes = [
  defineRoute({ path: '/look', title: 'Look at a block', load: () => import('./start.tsx') }),
  defineRoute({ path: '/block/:id/look', title: 'What is it?', load: () => import('./questions.tsx') }),
];
