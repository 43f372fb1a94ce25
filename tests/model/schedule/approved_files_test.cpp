#include "model/schedule/write_all.h"

#include "tests/model/schedule/small_job.h"
#include "tests/support/approval.h"

#include <catch2/catch.hpp>

TEST_CASE("the schedules of a small job are the approved ones", "[model][schedule][approved]") {
    const auto job = tests::small_job();
    for (const auto& file : model::schedule_files(job.project, job.catalogue, job.resolved)) {
        tests::check_approved("small_job/" + file.name, file.text);
    }
}
