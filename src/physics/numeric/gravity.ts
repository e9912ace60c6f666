// Standard gravity, m/s² (exact by convention: BIPM, The International System of Units, 9th ed., 2019, from memory).

export const GRAVITY = 9.80665;
