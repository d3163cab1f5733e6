// The one main of every test executable. A run that matched no test fails: doctest itself would exit 0.
#define DOCTEST_CONFIG_IMPLEMENT
#include <doctest/doctest.h>

namespace {

unsigned ran = 0;  // doctest makes the listener itself, so the count cannot live in main

struct Counter : doctest::IReporter {
    explicit Counter(const doctest::ContextOptions&) {}
    void report_query(const doctest::QueryData&) override {}
    void test_run_start() override {}
    void test_run_end(const doctest::TestRunStats& stats) override { ran = stats.numTestCasesPassingFilters; }
    void test_case_start(const doctest::TestCaseData&) override {}
    void test_case_reenter(const doctest::TestCaseData&) override {}
    void test_case_end(const doctest::CurrentTestCaseStats&) override {}
    void test_case_exception(const doctest::TestCaseException&) override {}
    void subcase_start(const doctest::SubcaseSignature&) override {}
    void subcase_end() override {}
    void log_assert(const doctest::AssertData&) override {}
    void log_message(const doctest::MessageData&) override {}
    void test_case_skipped(const doctest::TestCaseData&) override {}
};

DOCTEST_REGISTER_LISTENER("counter", 1, Counter);

}  // namespace

int main(int argc, char** argv) {
    doctest::Context context(argc, argv);
    const int status = context.run();
    if (context.shouldExit()) return status;
    return ran == 0 ? 1 : status;
}
