/** BCG vaccine trials, Colditz et al. 1994, JAMA 271:698-702 (R metadat::dat.bcg): log risk ratios. */
export const bcg = {
  effects: [
    -0.889311, -1.585389, -1.348073, -1.441551, -0.217547, -0.786116, -1.620898, 0.011952,
    -0.469418, -1.371345, -0.339359, 0.445913, -0.017314,
  ],
  standardErrors: [
    0.5706, 0.441114, 0.64449, 0.141457, 0.226297, 0.0831, 0.472247, 0.062941, 0.237559, 0.270231,
    0.11141, 0.72973, 0.267217,
  ],
  /** Absolute latitude. */
  doses: [44, 55, 42, 52, 13, 44, 19, 13, 27, 42, 18, 33, 33],
};

/** Six studies of Borenstein, Hedges, Higgins and Rothstein 2009, Introduction to Meta-Analysis, ch. 14. */
export const sixStudies = {
  effects: [0.0945, 0.2774, 0.3665, 0.6644, 0.4618, 0.1852],
  standardErrors: [0.0329, 0.0307, 0.0499, 0.0105, 0.0427, 0.0234].map(Math.sqrt),
};
