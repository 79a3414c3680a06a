// A page with its words put otherwise; files and figures of its drawings stay.
import type { Block, Page } from './write-page.ts';

type Words = (text: string) => string;

/** The page with all that is read on it through `words`; names of files, which links and pictures go by, as they are. */
export const reworded = ({ title, lead, facts, sections }: Page, words: Words): Page => ({
  title,
  lead: words(lead),
  ...(facts ? { facts: facts.map(({ says, is }) => ({ says: words(says), is: words(is) })) } : {}),
  sections: sections.map(({ heading, blocks }) => ({
    heading: words(heading),
    blocks: blocks.map((block) => rewordedBlock(block, words)),
  })),
});

function rewordedBlock(block: Block, words: Words): Block {
  const said = <T extends { readonly says: string }>(one: T): T => ({ ...one, says: words(one.says) });
  switch (block.kind) {
    case 'words':
      return { ...block, text: words(block.text) };
    case 'list':
    case 'ticks':
    case 'caution':
      return { ...block, items: block.items.map(words) };
    case 'table':
      return { ...block, head: block.head.map(words), rows: block.rows.map((row) => row.map(words)) };
    case 'links':
      return { ...block, items: block.items.map(said) };
    case 'pictures':
      return { ...block, items: block.items.map(said) };
    case 'picture':
      return said(block);
    case 'timeline':
      return { ...block, spans: block.spans.map(said) };
  }
}
