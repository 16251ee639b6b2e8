"""What is assumed before a client has done a single rep, and the theory of the load model.

**The question.** With bands on, a client does R clean reps of set 1 at load w. Which of the loads at hand
brings R into 25-40?

**The curve.** Whatever the true curve is (a power of the load, a hyperbola with a floor, an exponential),
in the neighbourhood of the working load it is close to a straight line when both reps and load are written
as logarithms:

    ln R = ln 31.5 - K (ln w - theta)

theta is the (log) load that brings 31.5 reps on an ordinary day, the middle of 25-40 on a log scale. It is
the one unknown that matters, because the best load is simply the one nearest to theta: the middle of
10-20 for set 2 and of 5-10 for set 3 belong to the same load when reps about halve from set to set.

**Why the slope K is not learned.** A client who is held in range tells almost nothing about K, and a slope
fitted to noise would sometimes turn *more* reps into a *lower* load, which no coach would sign. With K
fixed, theta is a sum of the observed log reps with weights that are never negative: more clean reps in any
session can never lower the next load. A wrong K costs little, since it only scales the first corrections.
That K is not known exactly widens the forecast whenever the load moves.

**Updating.** theta starts from the tested maximum, drifts up a little with every day (strength and
tolerance grow) and is uncertain by a little more each day. Each session is one observation,
z = ln w + (ln R - ln 31.5) / K. Normal prior times normal likelihood gives the usual precision-weighted
mean in closed form. One freak session moves theta no further than 2.5 standard deviations would.

**What a session can say.** To failure: exactly R. With reps left: R plus those, less exactly. Bands loose,
or reps faster than the tempo: *at most* R. Bands tight, set cut short: *at least* R. A bound moves theta
only when it contradicts it.

**The client's own spread.** Some people are steady, some are not, and some change faster than assumed. A
factor on the standard deviation of every forecast is learned beside theta on a small grid of values; the
forecast is the mixture over that grid, which gives the 80 % range its honest tails.
"""

import math

# Middle of 25-40 on a log scale, counting whole reps: sqrt(24.5 x 40.5). Range: common practice, no source.
MIDDLE = math.log(math.sqrt(24.5 * 40.5))

# Percent fewer reps for one percent more load: the middle between 1.5 (Epley's formula at 30-40 % of the
# maximum) and 3.8 (Nuzzo et al. 2024, Sports Med 54:303: about 15 reps at 70 %, 9 at 80 %).
SLOPE = 2.6
SLOPE_SD = 0.9  # covers both ends of the above

# Common practice, no source: start at about 30 % of the one-repetition maximum, which brings about 30 reps.
START = 0.30
# Of theta at the start, log load: a maximum off by 15 % and people who differ by 28 % in reps at one
# percentage (Nuzzo et al. 2024: standard deviation 2.51 at 9 reps), divided by the slope.
START_SD = math.hypot(0.15, 0.28 / SLOPE)
UNKNOWN_SD = 0.5  # no maximum known: anything from half to double is plausible; own caution, no source

# Growth of strength and tolerance per day, log load: 1RM +7 to +10 % in 3 weeks of walking (Abe 2006, 2009),
# curl force +8.6 % in 6 weeks (Yasuda 2012): about 2 % a week at first.
GROWTH_A_DAY = 0.002
GROWTH_DAYS = 7  # days off beyond a week add no growth
WANDER_A_DAY = 0.011  # standard deviation of theta after one day, log load: own judgement, no source

# Day-to-day standard deviation of ln R: about 10 % between days plus counting in whole reps; own judgement.
SPREAD = 0.11
# How much a client's surprises exceed the usual ones, as a factor; learned on this grid.
FACTORS = (0.50, 0.63, 0.79, 1.0, 1.26, 1.59, 2.0)
FACTORS_SD = 0.5  # of the log of the factor between clients; own judgement, no source

FREAK = 2.5  # standard deviations beyond which a residual counts no more

# Standard deviation of ln R for every rep said to be left. Errors are about 1 rep near failure and more
# than 2 at 7-10 left (Hackett et al. 2017, JSCR 31:2162), and light sets are harder to judge.
LEFT_SD = 0.02
ROUGH_SD = 0.20  # a count the client was not sure of; own judgement, no source

# Layoff: strength kept for two weeks, then half a percent a day, at most 15 %; own caution, no source.
LAYOFF_DAYS = 14
LOSS_A_DAY = 0.005
MOST_LOSS = 0.15
ILLNESS_LOSS = 0.03  # own caution, no source
ILLNESS_SD = 0.08

# Bands as the client rates them: 6-7 wanted (common practice, no source); 8 is called too tight because 7
# of 10 was already 81 % of arterial occlusion pressure in the arm (Bell et al. 2018).
LOOSE_BELOW = 6
TIGHT_FROM = 8
REFILL_LIMIT_S = 3.0  # common practice; 2.88 s separates arterial from venous (Shinozaki et al. 2023)

# Natural log of the fall from set to set: about one half each time (common practice, no source).
HALF = math.log(2)
# To failure four times: 36.0 / 14.7 / 11.5 / 10.4 reps (Rolnick et al. 2025, Sports Med - Open 11:84).
PUBLISHED_REPS = (36.0, 14.7, 11.5, 10.4)
FALL_SD = 0.25  # between clients; the published intervals of set 2 span 29-56 % of set 1
FALL_NOISE = 0.25  # within a client, session to session; own judgement, no source

GENTLE_SESSIONS = 2  # the first two stop with reps left; own caution, no source
GENTLE_LEFT = 4  # middle of "3-5 clean reps left"; own caution, no source
