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

// What an earlier export left is older than what is new beside it.
std::string older_words(const fs::path& file) {
    std::error_code unseen;
    return fs::exists(file, unseen) ? "; " + file.filename().string() + " there is an older one"
                                    : std::string();
}

void add_buying(ToWrite& made,
                const ProjectCopy& of,
                const fs::path& folder,
                const PaperGoOn& go_on) {
    if (!has_bars(of.resolved)) return;
    auto buying = model::buying_files(*of.project, *of.catalogue, of.resolved, *of.prices,
                                      {.supplier = {}, .go_on = [&] { return go_on(0.0); }});
    if (!buying) {
        made.words +=
            ", but not what is bought: " + engine::to_text(buying.error()) + older_words(folder);
        return;
    }
    for (auto& file : buying->files) {
        made.files.push_back({.path = folder / file.name,
                              .bytes = std::move(file.text),
                              .keeps_old = model::keeps_old(file.name)});
    }
    made.words += ", and what is bought into " + folder.filename().string();
}

// Whether it goes on; what cannot be printed is said.
bool add_printed(ToWrite& made,
                 engine::Result<ToWrite> printed,
                 const fs::path& file,
                 const char* what) {
    if (!printed && printed.error().code == engine::ErrorCode::cancelled) return false;
    if (!printed) {
        made.words += std::string("; no ") + what + ": " + engine::to_text(printed.error()) +
                      older_words(file);
        return true;
    }
    if (!printed->files.empty()) made.words += std::string(", and the ") + what;
    made.words += printed->left_out;
    for (auto& one : printed->files) made.files.push_back(std::move(one));
    return true;
}

// Strips of holes that are no more are not left for somebody to drill by.
bool add_strips(ToWrite& made,
                const PaperWork& work,
                const fs::path& file,
                const PaperGoOn& go_on) {
    auto strips = strips_to_write(work, file, go_on);
    std::error_code unseen;
    if (strips && strips->files.empty() && fs::exists(file, unseen)) {
        made.gone.push_back(file);
        made.words += "; " + file.filename().string() + " is taken away, since it is of before";
    }
    return add_printed(made, std::move(strips), file, "drill strips");
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
    add_buying(made, *work.of, folder / buying_folder, part_of(go_on, 0.2, 0.5));
    if (!go_on(0.5)) return was_cancelled();
    const auto book = folder / book_name;
    if (!add_printed(made, book_to_write(work, book, part_of(go_on, 0.5, 0.8)), book,
                     "shop book") ||
        !add_strips(made, work, folder / strips_name, part_of(go_on, 0.8, 1.0))) {
        return was_cancelled();
    }
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
        if (!model::keeps_old(name)) look(fs::path(buying_folder) / name);
    }
    look(book_name);
    look(model::stamps_beside(book_name));
    look(strips_name);
    return there;
}

}  // namespace editor
