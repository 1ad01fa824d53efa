/** The server as a process of its own, to be killed. */
import { startServer } from '../src/start.ts';

const [data = '', examples = '', web = ''] = process.argv.slice(2);
const started = await startServer({ examples, web, data, port: 0 });
process.stdout.write(`${started.address}\n`);
process.once('SIGTERM', () => void started.close());
