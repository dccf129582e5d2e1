// `npm start`: gets everything ready, serves the editor on this machine and opens it.
import { spawn } from 'node:child_process';
import { parseArgs } from 'node:util';
import { checkNode, ensureBuilt, ensureInstalled, runMain, Stop } from './bootstrap.mjs';
import { answersAsOurs, HOST, PORT, serve } from './server.mjs';

const HELP = `npm start -- [--port N] [--no-open]

Builds the editor where needed and serves it at http://${HOST}:${PORT}/, on this machine only.
  --port N    another port. The browser keeps plans by port: plans made on ${PORT} do not show on another.
  --no-open   do not open a browser.`;

const readArguments = () => {
  let values;
  try {
    ({ values } = parseArgs({
      options: { port: { type: 'string' }, 'no-open': { type: 'boolean' }, help: { type: 'boolean' } },
    }));
  } catch (error) {
    throw new Stop(`${error.message}\n\n${HELP}`);
  }
  const port = values.port === undefined ? PORT : Number(values.port);
  if (!Number.isInteger(port) || port < 1 || port > 65535)
    throw new Stop(`“${values.port}” is not a port. Use a number from 1024 to 65535.`);
  return { port, open: !values['no-open'], help: values.help };
};

/** Opens the address in a browser where there is a desktop to show it. */
const openBrowser = (url) => {
  const command =
    process.platform === 'darwin'
      ? ['open', url]
      : process.platform === 'win32'
        ? ['cmd', '/c', 'start', '', url]
        : process.env.DISPLAY || process.env.WAYLAND_DISPLAY
          ? ['xdg-open', url]
          : undefined;
  if (!command || process.env.CI) return;
  const child = spawn(command[0], command.slice(1), { stdio: 'ignore', detached: true });
  // The address is printed, so a desktop without an opener loses nothing.
  child.on('error', () => {});
  child.unref();
};

await runMain(async () => {
  checkNode();
  const { port, open, help } = readArguments();
  if (help) {
    console.log(HELP);
    return 0;
  }
  ensureInstalled(console.log);
  const folder = ensureBuilt('app', console.log);
  const url = `http://${HOST}:${port}/`;
  if (await answersAsOurs(port)) {
    console.log(`Lampwright is already running at ${url}`);
    if (open) openBrowser(url);
    return 0;
  }
  let server;
  try {
    server = await serve(folder, port);
  } catch (error) {
    if (error.code === 'EADDRINUSE')
      throw new Stop(
        `Port ${port} is used by another program. Stop that program, or choose another port:\n` +
          '  npm start -- --port 41874\n' +
          'Plans are kept by port: those made on one do not show on another.',
      );
    if (error.code === 'EACCES')
      throw new Stop(`This user may not open port ${port}. Choose one above 1023.`);
    throw error;
  }
  console.log(`Lampwright is at ${url}`);
  console.log('It answers on this machine only. Press Ctrl+C to stop; plans stay in the browser.');
  if (open) openBrowser(url);
  for (const signal of ['SIGINT', 'SIGTERM'])
    process.once(signal, () => {
      server.close();
      server.closeAllConnections();
    });
  return 0;
});
