#include "sim/balance/student.h"

#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>

namespace spurwright::balance {
namespace {

// No exceptions: what is asked is inside what is defined, and what overflows is infinite.
using QuietPolicy = boost::math::policies::policy<
    boost::math::policies::domain_error<boost::math::policies::ignore_error>, boost::math::policies::pole_error<boost::math::policies::ignore_error>,
    boost::math::policies::overflow_error<boost::math::policies::ignore_error>, boost::math::policies::evaluation_error<boost::math::policies::ignore_error>,
    boost::math::policies::promote_double<false>>;
using StudentT = boost::math::students_t_distribution<double, QuietPolicy>;

} // namespace

double student_reach(double confidence, double freedom) {
    return boost::math::quantile(boost::math::complement(StudentT(freedom), (1 - confidence) / 2));
}

double normal_reach(double confidence) {
    return boost::math::quantile(boost::math::complement(boost::math::normal_distribution<double, QuietPolicy>(), (1 - confidence) / 2));
}

double student_p(double t, double freedom) { return 2 * boost::math::cdf(boost::math::complement(StudentT(freedom), t < 0 ? -t : t)); }

double student_freedom_to_see(double change, double deviation, double alpha, double beta) {
    return StudentT::find_degrees_of_freedom(change, alpha / 2, beta, deviation);
}

} // namespace spurwright::balance
