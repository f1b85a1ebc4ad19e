import { defineRoute } from '../../ui/route.ts';

export const routes = [defineRoute({ path: '/', title: 'Shelf', load: () => import('./screen.tsx') })];
