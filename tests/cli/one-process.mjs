// Runs command lines of the built command one after another in one process, since starting node and loading what a
// command needs is most of what it costs. Each message is { main, args, cwd }, each answer
// { status, out, lines, took }: the processor time it took, and the most memory that the process has had so far.
let count = 0;
let last = Promise.resolve();

const caught = (stream) => {
  const parts = [];
  const write = stream.write;
  stream.write = (part, coding, told) => {
    parts.push(Buffer.from(part));
    (typeof coding === 'function' ? coding : told)?.();
    return true;
  };
  return () => {
    stream.write = write;
    return Buffer.concat(parts).toString();
  };
};

async function answer({ main, args, cwd }) {
  process.chdir(cwd);
  const [out, err] = [caught(process.stdout), caught(process.stderr)];
  process.exitCode = undefined;
  process.argv = [process.argv[0], main, ...args];
  const begin = process.cpuUsage();
  // Another address is another copy of the command's first file; what it loads is shared.
  await import(`${main}?${count++}`);
  const status = process.exitCode ?? 0;
  process.exitCode = 0;
  const lines = err().split('\n');
  if (lines.at(-1) === '') lines.pop();
  const { user, system } = process.cpuUsage(begin);
  const took = { cpuSeconds: (user + system) / 1e6, peakBytes: process.resourceUsage().maxRSS * 1024 };
  return { status, out: out(), lines, took };
}

process.stdout.setMaxListeners(0);
process.stderr.setMaxListeners(0);
process.on('message', (line) => {
  last = last.then(async () => process.send(await answer(line)));
});
process.on('disconnect', () => process.exit());
