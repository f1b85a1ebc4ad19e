import { defineRoute } from '../../ui/route.ts';

export const routes = [
  defineRoute({ path: '/sales', title: 'Sales', load: () => import('./list-screen.tsx') }),
  defineRoute({ path: '/sale/:id', title: 'Sale', load: () => import('./screen.tsx') }),
];
