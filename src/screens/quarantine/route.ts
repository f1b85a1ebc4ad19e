import { defineRoute } from '../../ui/route.ts';

export const routes = [
  defineRoute({ path: '/quarantine', title: 'Quarantine', load: () => import('./list-screen.tsx') }),
  defineRoute({ path: '/block/:id/quarantine', title: 'Quarantine', load: () => import('./screen.tsx') }),
];
