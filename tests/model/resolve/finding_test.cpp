#include "model/resolve/finding.h"

#include <catch2/catch.hpp>

TEST_CASE("a finding says where it is, naming a frame once", "[model][finding]") {
    const model::Finding finding{
        .code = "loose_end",
        .concerns = {{model::SubjectKind::member, "counter", "post left"},
                     {model::SubjectKind::member, "counter", "rail front top"}}};
    CHECK(model::where_text(finding) == "counter: member post left, member rail front top");
}
