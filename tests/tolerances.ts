/**
 * One named tolerance per kind of comparison, each with its reason. No bare 1e-6 in a test.
 */

/** A table printed with three decimals: half of the last one. */
export const PRINTED_3_DECIMALS = 0.5e-3 + 1e-12;
/** Values printed to four decimals in a published table. */
export const PRINTED_4_DECIMALS = 0.5e-4 + 1e-12;
/** Two routes through the same double-precision arithmetic. */
export const SAME_ARITHMETIC = 1e-10;
/** White points computed by summation against ASTM E308's printed to three decimals. */
export const WHITE_POINT_3_DECIMALS = 0.006;
/** XYZ of the reference cases, which a second implementation met to 0.0003. */
export const XYZ_SECOND_IMPLEMENTATION = 0.0006;
/** Munsell value and Y printed to six decimals from the standard's polynomial. */
export const PRINTED_6_DECIMALS = 0.6e-6;
/** Lab of the reference cases, carried at three decimals of XYZ. */
export const LAB_SECOND_IMPLEMENTATION = 0.002;
/** Bradford matrices printed to seven decimals in the standard, chained there and back. */
export const ADAPTATION_ROUND_TRIP = 2e-5;
/** Other libraries round their white points to five digits; a display channel (0..1) may differ by this. */
export const OTHER_LIBRARY_DISPLAY = 2e-3;
/** Values printed to five decimals in a table. */
export const PRINTED_5_DECIMALS = 0.6e-5;
/** A lossless film returns all light; what is left is the quadrature's rounding. */
export const ENERGY_BALANCE = 1e-10;
/** The H-function by iteration and by its closed-form integral, whose own quadrature is good to about this. */
export const H_FUNCTION_TWO_ROUTES = 1e-6;
/** Four printed decimals, the last of a hand-computed table of 1950 and quoted from memory. */
export const H_TABLE_FROM_MEMORY = 1e-4;
/** The table of reflectance against albedo against a direct solution, as its file states. */
export const TRANSFER_TABLE = 1e-12;
/** Against a finer quadrature, without a boundary (the worst case: 2e-9; under 1e-14 with one). */
export const TRANSFER_QUADRATURE = 1e-8;
/** The same equations in another language's double arithmetic, summed in another order. */
export const ANOTHER_LANGUAGE = 1e-9;
/** Lab of an sRGB pixel against libraries whose matrices and white carry other digits than IEC 61966-2-1's four. */
export const PICTURE_LAB_OTHER_LIBRARY = 0.06;
/** Lab and Y kept in single precision (24 bits of a number up to 100), summed over a few pixels. */
export const SINGLE_PRECISION_LAB = 1e-4;
/** Quantile of the normal distribution by Abramowitz and Stegun 26.2.23, which is good to 4.5e-4. */
export const NORMAL_QUANTILE = 4.6e-4;
/** Centroids of bands, nm: sums on different grids, a bell cut off at the ends, a grid of 10 nm. */
export const BAND_CENTRE_NM = 0.05;
/** Ratio errors printed to one or two digits (1.05 % as 1.0 %). */
export const PRINTED_RATIO_SIGMA = 0.16;
/** Correlations and relative variances from 20 000 trials: four times 1/sqrt(20 000). */
export const SCATTER_OF_TRIALS = 0.029;
/** Fractions of the perfect diffuser by weights at 10 nm made from other tables (10 nm sums of 1 nm functions). */
export const OTHER_WEIGHTS_TRISTIMULUS = 0.002;
/** Discrete ordinates against H-functions, and adding layers against solving the double one. */
export const TWO_TRANSFER_METHODS = 1e-8;
/** The fixture's maker conserves energy to 1 %; its reflectances are met to a fifth of that. */
export const OTHER_TRANSFER_PROGRAM = 0.002;
/** Reflectance factor from the simulated head: count noise of 0.25 sqrt(count) in sample and white, sd 0.0016 at most; this is four of it. */
export const COUNTED_REFLECTANCE = 0.0065;
/** CIEDE2000 of a palette fitted to eight bands; the reading noise and the model's error (Kubelka-Munk against radiative transfer) together. */
export const LADDER_FROM_EIGHT_BANDS = 1;
/** Shares of a recipe found again from its own colour; one colour can be had by neighbouring shares. */
export const RECIPE_FOUND_AGAIN = 0.01;
/** L* of a recipe whose value is held against the one asked for: a hundredth, as the search promises, and a margin. */
export const VALUE_HELD_L = 0.05;

// Mixing.
/** Slopes of a colour against central differences with steps of 1e-5 of an amount. */
export const SLOPE_BY_DIFFERENCES = 1e-5;
/** Shares of a made target against those it was made with: what a search must recover. */
export const RECOVERED_SHARE = 0.01;
/** Optics check values carried at eight decimals. */
export const PRINTED_8_DECIMALS = 0.6e-8;
/** Optics check values carried at six decimals. */
export const PRINTED_6_DECIMALS_REFLECTANCE = 0.6e-6;
/** Metamerism check values, own 10 nm weights (the reference note's own tolerance). */
export const METAMERISM_OWN_WEIGHTS = 0.05;
/** Our search against another optimiser on the same problem, CIEDE2000: neither stops at the last digit. */
export const OTHER_OPTIMISER = 0.02;
/** Grams to the scale's step, after binary fractions. */
export const WEIGHED = 1e-9;
/** A standard deviation from 4000 random draws is good to a few per cent. */
export const MONTE_CARLO_RELATIVE = 0.08;
/** Grams of a tube so many times as strong: the descent stops at CIEDE2000 1e-4, which is less than this in grams. */
export const STRENGTH_CARRIED = 1e-3;
/** Mean CIEDE2000 of mixes across two merged profiles against radiative transfer: both fits' and the bridge's errors. */
export const MERGED_TRANSFER_MEAN = 1;
/** CIEDE2000 along a ladder re-expressed under another surface: four rungs, two constants a wavelength. */
export const REEXPRESSED_LADDER = 0.25;
/** A slope against central differences of step 1e-6: half the digits. */
export const OPTICS_SLOPE_BY_DIFFERENCES = 2e-6;
/** Least-squares problems certified to eleven digits: six are asked of each parameter, as the collection's own guide does. */
export const CERTIFIED_DIGITS = 1e-6;
/** K/S of Saunderson's equation against exact transfer, relative, over the whole range of tints (method.md). */
export const SURFACE_AGAINST_TRANSFER = 0.02;
/** A straight line for what a perfect white reads against k2, reflectance factor: well under the doubt of a white tile. */
export const TOP_BY_A_LINE = 0.002;
/** Predictions with the old tube as prior against without, where the new tube is another paint: at most 5 % worse. */
export const PRIOR_NO_WORSE = 1.05;
/** Tinting strength from one weighed tint (1 % weighing error), per cent: three of its standard deviations and a margin. */
export const STRENGTH_READ = 5;
/** Share by mass of a mix read back from its measured reflectance, two tubes of a fitted palette: a twentieth. */
export const MATCHED_SHARE = 0.05;
