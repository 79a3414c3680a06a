// Runs many command lines of the built command in one process, since starting node is most of what a refusal costs.
// Standard input: { main, args: [[...], ...] }. Standard output: [{ status, out, lines }, ...].
const text = [];
for await (const part of process.stdin) text.push(part);
const { main, args } = JSON.parse(Buffer.concat(text).toString());

const write = process.stdout.write.bind(process.stdout);
process.stdout.setMaxListeners(0);
process.stderr.setMaxListeners(0);
const ran = [];
for (const [index, words] of args.entries()) {
  let [out, err] = ['', ''];
  process.stdout.write = (part) => {
    out += part;
    return true;
  };
  process.stderr.write = (part) => {
    err += part;
    return true;
  };
  process.exitCode = undefined;
  process.argv = [process.argv[0], main, ...words];
  // Another address is another copy of the command's first file; what it loads is shared.
  await import(`${main}?${index}`);
  const lines = err.split('\n');
  if (lines.at(-1) === '') lines.pop();
  ran.push({ status: process.exitCode ?? 0, out, lines });
}
process.exitCode = 0;
write(JSON.stringify(ran));
