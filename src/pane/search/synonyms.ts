/**
 * Words of the trade that mean the same here: what stands before the colon stands for all of the line.
 * Several words are one expression. A line that is further in goes on with the one above it.
 */
export const SAME: ReadonlyMap<string, readonly string[]> = new Map(
  rowsOf(`
  reserve: rir, reps in reserve, rep in reserve, repetitions in reserve, reps left, reps to spare, in the
    tank, left over, left, leave, leaving
  failure: failing
  load: weight, weights, heavy, heavier, kg, kgs, kilo, kilos, kilogram, kilograms, lb, lbs, pound, pounds
  max: maximum, maxima, 1rm, 1 rm, one rep max, one rm, one repetition maximum, rep maximum, maxes
  e1rm: estimated 1rm, estimated max, estimated maximum, estimated one rep max, predicted max, predicted 1rm,
    predict max, estimate max
  repmax: rep max, repetition maximum, rm
  rep: repetition, single, double, triple, singles, doubles, triples
  rpe: rating of perceived exertion, rate of perceived exertion, perceived exertion, perceived effort
  session rpe: srpe, s rpe
  percentage: percent, pct, intensity
  bodyweight: body weight, body mass, bodymass, bw
  warmup: warm up, warming up, warm
  athlete: lifter, rower, player, jumper, swimmer, runner, thrower, client, trainee, girl, boy, guy, woman, man
  subject: participant
  squad: team, crew, everybody, everyone
  plan: program, programme, programming, prescribed, prescription, prescribe, planned
  actual: performed, done, executed
  block: mesocycle, macrocycle, phase, cycle
  periodization: periodisation, periodized, periodised, periodize
  logbook: log book, diary, journal, training diary, training journal
  tonnage: volume load, volume, total weight, tonnes
  amrap: as many reps as possible, rep out, all out set
  noise: wobble, measurement error, test error, test noise, random error
  study: paper, article, publication, published
  meta: meta analysis, metaanalysis, meta analytic, systematic review, pool, pooled, pooling
  metaregression: meta regression
  before: pre, pretest, baseline
  after: post, posttest
  prepost: pre post, before after, before and after, pre and post, pre to post
  interval: ci, confidence limits, confidence limit, confidence interval, confidence intervals, credible
    interval
  sd: standard deviation, standard deviations, spread
  se: standard error, std error
  retest: test retest, tested twice
  typicalerror: typical error, sem, standard error of measurement
  responder: respond, response, responded
  chance: probability, odds, likely, likelihood, likelier, probable
  random: randomise, randomize, randomly, randomised, randomisation
  count: number, quantity, how many
  times: x, multiplied by
  equation: formula
  fast: quick, speed, speed up, rate, pace
  working weight: work weight, training weight, working load
  down: lower, decrease, reduce, drop, descend, fall
  less: below, under, fewer, few
  month: january, february, april, june, july, august, september, october, november, december, autumn, spring,
    summer, winter
  summary: sum, summarise, summarize, overview, recap, break down, breakdown
  small: smallest, minimum, minimal, least
  two group: both group, two team
  worthwhile: matter, matters, meaningful, care about, caring about
  get: figure out, work out, calculate, compute, find out
  call: guess, judge, rating
  big: large, huge
  reliable: consistent, repeatable, reproducible, trustworthy, stable
  hard: tough, difficult, challenging, demanding
  easy: light
  session: workout, practice, training session
  treatment: intervention, experimental
  altogether: in total, in all
  equal: same, equivalent, equivalence, alike
  detectable: detect
  dose: dosage
  picture: graph, plot, draw, figure, diagram, image, visualise, visualize, drawing
  template: sheet, form, printable, spreadsheet, worksheet
  chart: cheat sheet
  onelifter: i, my, me, he, she, him, his, her, one athlete, one lifter, this athlete, this lifter, single
    athlete
  who: which of, which athlete, which lifter, whose
  phone: mobile, smartphone, qr, qr code
  lift: deadlift, squat, bench, press, snatch, clean, bench press, overhead press, pull up, exercise, movement
  muscle: quad, hamstring, glute, triceps, biceps, chest, back, lats, delts, calves, body part
  test: cmj, jump, sprint, erg, dynamometer, 2k
`).map((row) => {
    const [word = "", others = ""] = row.split(":");
    return [word.trim(), wordsOf(others)];
  }),
);

/** Words that lie near each other: where one is asked for the others count too, but for less. */
export const NEAR: readonly (readonly string[])[] = rowsOf(`
  improve, gain, progress, better, stronger, strength, change, increase, rise, risen, up, grow
  chart, picture, table, grid
  worthwhile, worth
  trial, study
  summary, altogether, total, tonnage
  treatment, group, training
  week, weekly, month, season
  real, true, reliable, trust
  error, noise, typicalerror, wrong, off, accurate
  compare, versus, vs, against, difference
  group, squad
  athlete, squad, subject, people
  predict, estimate, expected, forecast
  effort, hard, easy, rpe
  repmax, max, e1rm
  log, logbook
  rpe, reserve
  equation, curve
`).map(wordsOf);

function rowsOf(text: string): string[] {
  return text.trim().split(/\n {2}(?! )/);
}

function wordsOf(row: string): string[] {
  return row.split(",").map((word) => word.replace(/\s+/g, " ").trim());
}
