import { defineRoute } from '../../ui/route.ts';

export const routes = [defineRoute({ path: '/settings', title: 'Settings', load: () => import('./screen.tsx') })];
