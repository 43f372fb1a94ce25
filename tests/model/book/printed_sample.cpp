#include "tests/model/book/printed_sample.h"

#include "model/project/project_json.h"
#include "model/resolve/resolve.h"

#include "tests/model/catalogue/shipped_catalogue.h"
#include "tests/model/project/sample_files.h"

#include <catch2/catch.hpp>

namespace tests {

PrintedSample::PrintedSample(const std::string& name) {
    auto read = model::read_project_json(model_tests::sample_text(name));
    if (!read) FAIL(engine::to_text(read.error()));
    project = std::move(read).value();
    resolved = model::resolve(project, shipped_catalogue());
}

PrintedSample::PrintedSample(const std::string& name, const engine::TapeStyle& shown)
    : PrintedSample(name) {
    project.shown = shown;
}

}  // namespace tests
