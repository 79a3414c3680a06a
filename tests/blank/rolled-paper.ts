// Paper wrapped around a cone in three dimensions, without developing the cone: for what a template must miss by.

export interface TestCone {
  /** At the foot corner, mm. */
  readonly radius: number;
  /** Radians, positive when wider at the lip. */
  readonly lean: number;
}

/**
 * Where a straight line drawn on paper ends on the cone: a geodesic, marched by the classical Runge-Kutta method.
 * `heading`: from straight up the wall, radians, clockwise seen from outside. Source: Clairaut's relation,
 * r sin(heading) constant (do Carmo, Differential Geometry of Curves and Surfaces, 4-4, from memory).
 */
function geodesic(
  cone: TestCone,
  from: number,
  heading: number,
  length: number,
): { turned: number; along: number } {
  const sine = Math.sin(cone.lean);
  const rate = ([along = 0, , h = 0]: readonly number[]): number[] => {
    const r = cone.radius + along * sine;
    return [Math.cos(h), Math.sin(h) / r, (-sine / r) * Math.sin(h)];
  };
  const steps = 4000;
  const dt = length / steps;
  let state = [from, 0, heading];
  const plus = (a: readonly number[], b: readonly number[], by: number) =>
    a.map((v, i) => v + (b[i] ?? 0) * by);
  for (let i = 0; i < steps; i++) {
    const k1 = rate(state);
    const k2 = rate(plus(state, k1, dt / 2));
    const k3 = rate(plus(state, k2, dt / 2));
    const k4 = rate(plus(state, k3, dt));
    state = state.map(
      (v, j) => v + (dt / 6) * ((k1[j] ?? 0) + 2 * (k2[j] ?? 0) + 2 * (k3[j] ?? 0) + (k4[j] ?? 0)),
    );
  }
  return { turned: state[1] ?? 0, along: state[0] ?? 0 };
}

/**
 * The gaps at foot and lip ends and the climb of a template made for one cone and wrapped on another, its start line
 * up the wall with the foot end where it belongs. The template's corners come from school geometry: the ring about the
 * apex of its own cone (or a rectangle). Needs a sweep under half a turn, so that the straight line to a corner is the one.
 */
export function wrapPaper(
  made: TestCone,
  band: { from: number; to: number },
  paper: number,
  truth: TestCone,
) {
  const grown = ({ radius, lean }: TestCone): TestCone => ({
    radius: radius + (paper / 2) * Math.cos(lean),
    lean,
  });
  const [sheet, cone] = [grown(made), grown(truth)];
  const corners = [band.from, band.to].map((along) => {
    const sine = Math.sin(sheet.lean);
    const girth = (at: number) => 2 * Math.PI * (sheet.radius + at * sine);
    if (sheet.lean === 0) return { x: girth(0), y: along - band.from };
    const apex = (at: number) => girth(at) / (2 * Math.PI * sine);
    const sweep = 2 * Math.PI * sine;
    return { x: apex(along) * Math.sin(sweep), y: apex(along) * Math.cos(sweep) - apex(band.from) };
  });
  const [foot, lip] = corners.map(({ x, y }) => {
    const end = geodesic(cone, band.from, Math.atan2(x, y), Math.hypot(x, y));
    const radius = cone.radius + end.along * Math.sin(cone.lean);
    return { gap: (2 * Math.PI - end.turned) * radius, along: end.along };
  });
  return { foot: foot?.gap ?? 0, lip: lip?.gap ?? 0, climb: (foot?.along ?? 0) - band.from };
}
