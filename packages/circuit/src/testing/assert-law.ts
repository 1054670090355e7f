import fc from "fast-check";

/**
 * As `fc.assert`, which prints seed and path of a failing run; give them as { seed, path } to repeat it. Ends there: to
 * make a failing network smaller can take more than an hour. { endOnFailure: false } does it all the same.
 */
export const assertLaw = <Drawn>(property: fc.IProperty<Drawn>, parameters: fc.Parameters<Drawn>): void =>
  fc.assert(property, { endOnFailure: true, ...parameters });
