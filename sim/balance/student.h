// Student's and the normal distribution, from a library (Boost.Math) behind this one file.
#pragma once

namespace spurwright::balance {

// How far from the middle, in standard errors, the confidence reaches. Needs 0 < confidence < 1, freedom >= 1.
double student_reach(double confidence, double freedom);
double normal_reach(double confidence);

// Two-sided: how often |T| is this large or larger. Needs freedom >= 1.
double student_p(double t, double freedom);

// Degrees of freedom with which a change of so much is told, at a two-sided risk `alpha` of telling one that is none, and
// `beta` of missing it. Needs change and deviation > 0, risks in (0, 0.5].
double student_freedom_to_see(double change, double deviation, double alpha, double beta);

} // namespace spurwright::balance
