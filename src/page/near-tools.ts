// What following readings on the page's own thread takes, fetched when it is asked for.
import type { Bench } from './model/bench.ts';
import type { FollowingTools } from './near-following.ts';

export const loadFollowing = async (): Promise<FollowingTools> => {
  const [tools, { loadWords }] = await Promise.all([
    import('./worker/following.ts'),
    import('./worker/engine.ts'),
  ]);
  const words = await loadWords();
  const { followerOf, followedView, givenJob, Room } = tools;
  const room = new Room();
  const filesOf = ({ files }: Bench) => new Map(Object.entries(files));
  return {
    followerOf,
    follow: (leads, bench, within) =>
      followedView(leads, givenJob(bench, filesOf(bench)), words, within, room),
  };
};
