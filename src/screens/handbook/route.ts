import { defineRoute } from '../../ui/route.ts';

const calculators = () => import('./calculators-screen.tsx');

/** The calculators stand before the sections, whose address they would otherwise fit. */
export const routes = [
  defineRoute({ path: '/handbook', title: 'Handbook', load: () => import('./screen.tsx') }),
  defineRoute({ path: '/handbook/calculators', title: 'Calculators', load: calculators }),
  defineRoute({ path: '/handbook/calculators/:calculator', title: 'Calculators', load: calculators }),
  defineRoute({ path: '/handbook/:section', title: 'Handbook', load: () => import('./section-screen.tsx') }),
  defineRoute({ path: '/handbook/:section/:entry', title: 'Handbook', load: () => import('./entry-screen.tsx') }),
];
