// The kinds of wall as small profiles, to be picked by eye.
const profiles = {
  straight: 'M14 4L20 44H44L50 4',
  stepped: 'M12 4V18L22 26V44H42V26L52 18V4',
  smooth: 'M18 4C6 20 14 36 24 44H40C50 36 58 20 46 4',
} as const;

export const WallPicture = ({ kind }: { readonly kind: keyof typeof profiles }) => (
  <svg class="choice-picture" viewBox="0 0 64 48" aria-hidden="true">
    <path class="pic-body" d={profiles[kind]} />
  </svg>
);
