// What drawing on the page's own thread takes while readings are typed, fetched when it is asked for.
import type { Follower } from '../job/view/followed-view.ts';
import type { Room } from '../job/view/room.ts';
import type { Bench } from './model/bench.ts';
import type { FollowingTools } from './near-following.ts';
import type { DrawWall } from './near-wall.ts';

export const loadFollowing = async (): Promise<FollowingTools> => {
  const [tools, { loadWords }] = await Promise.all([
    import('./worker/following.ts'),
    import('./worker/engine.ts'),
  ]);
  const words = await loadWords();
  const { followerOf, followedView, givenJob } = tools;
  const [room, practiceRoom] = [new tools.Room(), new tools.Room()];
  const filesOf = ({ files }: Bench) => new Map(Object.entries(files));
  const follow = (leads: Follower, bench: Bench, within: number, into: Room) =>
    followedView(leads, givenJob(bench, filesOf(bench)), words, within, into);
  return {
    followerOf,
    follow: (leads, bench, within) => follow(leads, bench, within, room),
    practise: (leads, bench) => void follow(leads, bench, Number.POSITIVE_INFINITY, practiceRoom),
  };
};

export const loadWall = async (): Promise<DrawWall> => {
  const [{ wallOf }, { loadWords }] = await Promise.all([
    import('./worker/wall.ts'),
    import('./worker/engine.ts'),
  ]);
  const words = await loadWords();
  return (bench, window) => wallOf(bench, words, window);
};
