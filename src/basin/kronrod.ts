/** Points on [0, 1], weights of Kronrod's rule in all of them, and of Gauss's in every second one. */
export interface NestedRule {
  readonly at: Float64Array
  readonly kronrod: Float64Array
  readonly gauss: Float64Array
}

/**
 * Points and weights of the 15-point Kronrod rule on [0, 1] and of the 7-point Gauss rule in every second of its points.
 * Source: QUADPACK, routine qk15 (R. Piessens and others, 1983), from memory; a test integrates polynomials with them.
 */
const HALF_AT = [
  0.9914553711208126, 0.9491079123427585, 0.8648644233597691, 0.7415311855993945, 0.5860872354676911,
  0.4058451513773972, 0.20778495500789848,
]
const HALF_KRONROD = [
  0.022935322010529224, 0.06309209262997856, 0.10479001032225019, 0.14065325971552592, 0.1690047266392679,
  0.19035057806478542, 0.20443294007529889,
]
const HALF_GAUSS = [0, 0.1294849661688697, 0, 0.27970539148927664, 0, 0.3818300505051189, 0]

const mirrored = (half: readonly number[], middle: number, of: (v: number, sign: -1 | 1) => number): Float64Array =>
  Float64Array.from([...half.map((v) => of(v, -1)), of(middle, 1), ...half.map((v) => of(v, 1)).reverse()])

/** Exact up to degree 22. */
export const LONG_RULE: NestedRule = {
  at: mirrored(HALF_AT, 0, (v, sign) => (1 + sign * v) / 2),
  kronrod: mirrored(HALF_KRONROD, 0.20948214108472782, (v) => v / 2),
  gauss: mirrored(HALF_GAUSS, 0.4179591836734694, (v) => v / 2),
}

/**
 * The 7-point rule about the 3-point Gauss rule, exact up to degree 11: for what is nearly a polynomial of low degree.
 * Source: A. S. Kronrod (1965), weights from memory; a test integrates polynomials with them.
 */
export const SHORT_RULE: NestedRule = {
  at: mirrored([0.9604912687080203, 0.7745966692414834, 0.43424374934680254], 0, (v, sign) => (1 + sign * v) / 2),
  kronrod: mirrored([0.10465622602646726, 0.2684880898683334, 0.4013974147759622], 0.4509165386584741, (v) => v / 2),
  gauss: mirrored([0, 5 / 9, 0], 8 / 9, (v) => v / 2),
}
