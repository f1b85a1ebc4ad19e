import { defineRoute } from '../../ui/route.ts';

export const routes = [defineRoute({ path: '/bench', title: 'The bench', load: () => import('./screen.tsx') })];
