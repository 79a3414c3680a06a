// `npm run audit`: asks the registry for advisories on all that is locked. Ends with 0 where there are none, or each is explained in
// `advisories.json`; with 1 where one is not, or an explanation is of none any more; with 2 where the registry gives no answer.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './licences.ts';

/** An advisory that was looked at: why it does no harm here. */
interface Explained {
  /** Its address, as the registry gives it. */
  readonly url: string;
  readonly why: string;
}

interface Via {
  readonly url: string;
  readonly title: string;
  readonly name: string;
  readonly range: string;
}

/** What `npm audit --json` writes, as far as it is read: `via` holds an advisory, or the name of another package that has one. */
interface Answer {
  readonly vulnerabilities?: Record<string, { readonly via: readonly (Via | string)[] }>;
}

function askedOf(registry: string | undefined): Answer {
  const asked = registry === undefined ? [] : ['--registry', registry];
  const words = ['audit', '--json', '--fetch-retries=0', ...asked];
  const { stdout } = spawnSync('npm', words, { cwd: root, encoding: 'utf8' });
  try {
    return JSON.parse(stdout) as Answer;
  } catch {
    return {};
  }
}

function audit(registry: string | undefined, explanations: string): number {
  const { vulnerabilities } = askedOf(registry);
  if (!vulnerabilities) {
    console.error('the registry gives no answer: no advisory was looked at; ask again where one does');
    return 2;
  }
  const explained = JSON.parse(readFileSync(explanations, 'utf8')) as readonly Explained[];
  const advisories = new Map<string, Via>();
  for (const { via } of Object.values(vulnerabilities))
    for (const one of via) if (typeof one !== 'string') advisories.set(one.url, one);
  const open = [...advisories.values()].filter(({ url }) => !explained.some((one) => one.url === url));
  const stale = explained.filter(({ url, why }) => !advisories.has(url) || why.trim() === '');
  for (const { name, range, title, url } of open) console.error(`${name} ${range}: ${title} (${url})`);
  for (const { url } of stale)
    console.error(`advisories.json: ${url} is of no package here, or tells no reason`);
  console.log(
    `${advisories.size} advisories, ${open.length} of them not explained, ${stale.length} explained in vain`,
  );
  return open.length + stale.length === 0 ? 0 : 1;
}

const [registry, explanations = join(import.meta.dirname, 'advisories.json')] = process.argv.slice(2);
process.exitCode = audit(registry || undefined, explanations);
