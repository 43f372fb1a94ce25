#include "tests/model/book/book_job.h"

#include "engine/files/whole_file.h"
#include "model/buying/estimate.h"
#include "model/project/project_json.h"
#include "model/schedule/findings.h"

#include "tests/model/book/texts_on_page.h"

#include <algorithm>
#include <filesystem>

namespace tests {

const model::Catalogue& book_catalogue() {
    static const auto catalogue = model::load_catalogue(BARWRIGHT_ASSETS).value();
    return catalogue;
}

std::vector<std::string> sample_names() {
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(BARWRIGHT_SAMPLES)) {
        if (entry.path().extension() == ".json") names.push_back(entry.path().filename().string());
    }
    std::sort(names.begin(), names.end());
    return names;
}

model::Project sample(const std::string& name) {
    const auto text =
        engine::read_whole_file(std::filesystem::path(BARWRIGHT_SAMPLES) / name).value();
    return model::read_project_json(text).value();
}

BookJob book_job(model::Project project) {
    BookJob job{std::move(project), {}, {}};
    const auto& catalogue = book_catalogue();
    job.resolved = model::resolve(job.project, catalogue);
    job.supply.plans = model::bar_plans(job.project, catalogue, job.resolved,
                                        {.effort = model::PlanEffort::first_fit});
    job.supply.estimate =
        model::estimate_of(job.project, catalogue, job.resolved, job.supply.plans, {});
    job.supply.findings = model::all_findings(job.project, catalogue, job.resolved);
    return job;
}

engine::Document book_of(const BookJob& job, engine::Paper paper) {
    return model::shop_book(job.project, book_catalogue(), job.resolved, job.supply, paper);
}

std::string words_in(const engine::Document& document) {
    std::string words;
    for (const auto& page : document.pages) words += words_on(page);
    return words;
}

}  // namespace tests
