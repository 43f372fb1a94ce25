#include "editor/export_run.h"

#include "model/book/book_files.h"
#include "model/buying/buying_files.h"
#include "model/schedule/write_all.h"

#include <system_error>
#include <utility>

namespace editor {
namespace {

namespace fs = std::filesystem;

constexpr const char* buying_folder = "buying";
constexpr const char* book_name = "book.pdf";
constexpr const char* strips_name = "strips.pdf";

void add_schedules(ToWrite& made, const ProjectCopy& of, const fs::path& folder) {
    auto files = model::schedule_files(*of.project, *of.catalogue, of.resolved,
                                       supply_of(*of.project, of.resolved, of.prices.get()));
    made.words = "Wrote " + std::to_string(files.size()) + " schedules into " + folder.string();
    for (auto& file : files)
        made.files.push_back({.path = folder / file.name, .bytes = std::move(file.text)});
}

bool has_bars(const model::Resolved& resolved) {
    for (const auto& piece : resolved.pieces) {
        if (piece.kind != model::PieceKind::panel) return true;
    }
    return false;
}

void add_buying(ToWrite& made, const ProjectCopy& of, const fs::path& folder) {
    if (!has_bars(of.resolved)) return;
    auto buying = model::buying_files(*of.project, *of.catalogue, of.resolved, *of.prices, {});
    if (!buying) {
        made.words += ", but not what is bought: " + engine::to_text(buying.error());
        return;
    }
    for (auto& file : buying->files) {
        made.files.push_back({.path = folder / file.name,
                              .bytes = std::move(file.text),
                              .keeps_old = file.name == model::buying_names.back()});
    }
    made.words += ", and what is bought into " + folder.filename().string();
}

// Whether it goes on; what cannot be printed is said.
bool add_printed(ToWrite& made, engine::Result<ToWrite> printed, const char* what) {
    if (!printed && printed.error().code == engine::ErrorCode::cancelled) return false;
    if (!printed) {
        made.words += std::string("; no ") + what + ": " + engine::to_text(printed.error());
        return true;
    }
    if (!printed->files.empty()) made.words += std::string(", and the ") + what;
    made.words += printed->left_out;
    for (auto& file : printed->files) made.files.push_back(std::move(file));
    return true;
}

std::string state_words(ExportState state) {
    if (state.errors > 0)
        return ", not fit to cut from: mend what findings.csv calls an error first";
    if (state.open == 0) return {};
    return (state.open == 1 ? "; one thing is" : "; " + std::to_string(state.open) + " are") +
           std::string(" to mend before you cut, see findings.csv");
}

}  // namespace

engine::Result<ToWrite> export_to_write(const PaperWork& work,
                                        const fs::path& folder,
                                        ExportState state,
                                        const PaperGoOn& go_on) {
    ToWrite made;
    add_schedules(made, *work.of, folder);
    if (!go_on(0.2)) return was_cancelled();
    add_buying(made, *work.of, folder / buying_folder);
    if (!go_on(0.5)) return was_cancelled();
    const auto strips = folder / strips_name;
    if (!add_printed(made, book_to_write(work, folder / book_name, part_of(go_on, 0.5, 0.8)),
                     "shop book") ||
        !add_printed(made, strips_to_write(work, strips, part_of(go_on, 0.8, 1.0)),
                     "drill strips")) {
        return was_cancelled();
    }
    if (made.files.back().path != strips) made.gone.push_back(strips);
    made.words += state_words(state);
    return made;
}

std::vector<std::string> exported_in(const fs::path& folder) {
    std::vector<std::string> there;
    const auto look = [&](const fs::path& name) {
        std::error_code unseen;
        if (fs::exists(folder / name, unseen)) there.push_back(name.string());
    };
    for (const auto name : model::schedule_names) look(name);
    for (const auto name : model::buying_names) {
        if (name != model::buying_names.back()) look(fs::path(buying_folder) / name);
    }
    look(book_name);
    look(model::stamps_beside(book_name));
    look(strips_name);
    return there;
}

}  // namespace editor
