// `npm start`: installs, builds, serves, says where.
import { install, run } from './install.mjs';

install();
run('npx', ['vite', 'build', '--config', 'src/vite.config.ts', 'src', '--logLevel', 'warn'], {
  NODE_ENV: 'production',
});

const { distFolder, serve } = await import('./serve.mjs');
const wanted = Number(process.env.PORT ?? 4173);
const server = await serve(distFolder, { port: wanted }).catch(() => serve(distFolder));
console.log(`\nBlockworth is at ${server.url}`);
console.log('Open it in a browser on this machine; Ctrl+C ends it. The files to put on a host are in dist/.');
process.on('SIGINT', () => server.close().then(() => process.exit(0)));
process.on('SIGTERM', () => server.close().then(() => process.exit(0)));
