#include "editor/fit_report.h"

#include "editor/open_project.h"
#include "model/room/band.h"
#include "model/room/read_scan.h"

#include <algorithm>
#include <array>
#include <ostream>
#include <set>

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

// To marks of the tape, inward; as it is where no mark lies between the two.
std::array<model::Nm, 2> on_tape(const model::BandInterval& interval,
                                 const engine::TapeStyle& shown) {
    const model::Nm step = engine::tape_step(shown).nm();
    const model::Nm from = (interval.from + step - 1) / step * step;
    const model::Nm to = interval.to / step * step;
    if (interval.from < 0 || from > to) return {interval.from, interval.to};
    return {from, to};
}

class FitReport {
public:
    FitReport(const engine::TapeStyle& shown, std::ostream& out) : shown_{shown}, out_{out} {}

    void print(const model::Band& band) {
        const bool nowhere = model::fits_nowhere(band);
        out_ << band.dimension << ": " << words(band.value, shown_)
             << (band.fits_now && !nowhere ? ", fits" : ", does not fit") << "\n";
        print_once("not measured", band.not_measured);
        print_once("whatever it is", band.regardless);
        if (nowhere) out_ << "  but for that it would fit:\n";
        for (const auto& interval : band.intervals) {
            const auto [from, to] = on_tape(interval, shown_);
            out_ << "  from " << words(from, shown_) << " to " << words(to, shown_)
                 << "\n    below: " << stop_words(interval.below)
                 << "\n    above: " << stop_words(interval.above) << "\n";
        }
        if (band.intervals.empty()) {
            out_ << "  no value from " << words(band.searched_from, shown_) << " to "
                 << words(band.searched_to, shown_) << " fits\n";
        }
        if (const auto largest = model::largest_that_fits(band, shown_);
            largest && ends(band, *largest))
            out_ << "  largest that fits, on the tape: " << words(*largest, shown_) << "\n";
        if (!band.is_proved) {
            out_ << "  after " << band.looked_at
                 << " values there was more to look at: something small may be missed in between\n";
        }
    }

private:
    void print_once(const char* when, const std::vector<model::Finding>& findings) {
        std::size_t known = 0;
        for (const auto& finding : findings) {
            const auto text = model::where_text(finding) + ": " + finding.what;
            if (!told_.insert(text).second) {
                ++known;
                continue;
            }
            out_ << "  " << when << ": " << text << "\n";
        }
        if (known > 0) {
            out_ << "  " << when << ": " << known << (known > 1 ? " faults" : " fault")
                 << " told above\n";
        }
    }

    const engine::TapeStyle& shown_;
    std::ostream& out_;
    std::set<std::string> told_;
};

std::string names_of(const model::Project& project) {
    std::string names;
    for (const auto& one : project.dimensions) {
        if (one.kind == engine::QuantityKind::length)
            names += (names.empty() ? "" : ", ") + one.name;
    }
    return names;
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
    FitReport report{project->shown, streams.out};
    for (const auto& one : project->dimensions) {
        if (!dimension.empty() && one.name != dimension) continue;
        const auto band = model::band_of(*project, *catalogue, scans, one.name);
        if (band) report.print(*band);
        found = found || band;
    }
    if (found || dimension.empty()) return ExitStatus::fine;
    return refused({engine::ErrorCode::unknown_name, "",
                    "there is no dimension \"" + dimension +
                        "\" that is a length with a value; there are " + names_of(*project)});
}

}  // namespace editor
