#include "editor/fit_report.h"

#include "editor/open_project.h"
#include "model/room/band.h"
#include "model/room/read_scan.h"

#include <algorithm>
#include <ostream>

namespace editor {
namespace {

std::string words(model::Nm length, const engine::TapeStyle& shown) {
    return model::length_in_words(engine::Length::from_nm(length), shown);
}

std::string stop_words(const model::BandStop& stop) {
    std::string text = stop.by;
    if (!stop.finding.what.empty()) text += ": " + stop.finding.what;
    return text;
}

// Whether something ends the interval with that value, and not only the search.
bool ends(const model::Band& band, model::Nm value) {
    return std::ranges::any_of(band.intervals, [&](const model::BandInterval& interval) {
        return value >= interval.from && value <= interval.to && !interval.above.is_of_search;
    });
}

void print_band(const model::Band& band, const engine::TapeStyle& shown, std::ostream& out) {
    const bool nowhere = model::fits_nowhere(band);
    out << band.dimension << ": " << words(band.value, shown)
        << (band.fits_now && !nowhere ? ", fits" : ", does not fit") << "\n";
    for (const auto& finding : band.not_measured)
        out << "  not measured: " << model::where_text(finding) << ": " << finding.what << "\n";
    for (const auto& finding : band.regardless)
        out << "  whatever it is: " << model::where_text(finding) << ": " << finding.what << "\n";
    if (nowhere) out << "  but for that it would fit:\n";
    for (const auto& interval : band.intervals) {
        out << "  from " << words(interval.from, shown) << " to " << words(interval.to, shown)
            << "\n    below: " << stop_words(interval.below)
            << "\n    above: " << stop_words(interval.above) << "\n";
    }
    if (band.intervals.empty()) {
        out << "  no value from " << words(band.searched_from, shown) << " to "
            << words(band.searched_to, shown) << " fits\n";
    }
    if (const auto largest = model::largest_that_fits(band, shown); largest && ends(band, *largest))
        out << "  largest that fits, on the tape: " << words(*largest, shown) << "\n";
    if (!band.is_proved) {
        out << "  after " << band.looked_at
            << " values there was more to look at: something small may be missed in between\n";
    }
}

}  // namespace

ExitStatus print_fit(const std::filesystem::path& project_file,
                     const std::string& dimension,
                     Streams streams) {
    const auto refused = [&](const engine::Error& error) {
        streams.err << "barwright: " << engine::to_text(error) << "\n";
        return ExitStatus::not_possible;
    };
    const auto project = open_project(project_file);
    if (!project) return refused(project.error());
    const auto catalogue = open_catalogue();
    if (!catalogue) return refused(catalogue.error());
    const auto scans = model::read_scans(*project, project_file.parent_path());
    bool found = false;
    for (const auto& one : project->dimensions) {
        if (!dimension.empty() && one.name != dimension) continue;
        const auto band = model::band_of(*project, *catalogue, scans, one.name);
        if (band) print_band(*band, project->shown, streams.out);
        found = found || band;
    }
    if (found || dimension.empty()) return ExitStatus::fine;
    return refused({engine::ErrorCode::unknown_name, "",
                    "there is no dimension \"" + dimension + "\" that is a length with a value"});
}

}  // namespace editor
