import { defineRoute } from '../../ui/route.ts';

export const routes = [
  defineRoute({ path: '/sales', title: 'Sales', load: () => import('./list-screen.tsx') }),
  defineRoute({ path: '/sales/prices', title: 'Your price list', load: () => import('./prices-screen.tsx') }),
  defineRoute({ path: '/sales/gaps', title: 'What the shelf lacks', load: () => import('./gaps-screen.tsx') }),
  defineRoute({ path: '/sale/:id', title: 'Sale', load: () => import('./screen.tsx') }),
  defineRoute({ path: '/sale/:id/record', title: 'About the sale', load: () => import('./record-screen.tsx') }),
  defineRoute({ path: '/sale/:id/home', title: 'Go home', load: () => import('./home-screen.tsx') }),
  defineRoute({ path: '/lot/:id', title: 'Job lot', load: () => import('./lot-screen.tsx') }),
];
