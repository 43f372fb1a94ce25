#include "model/resolve/splice_findings.h"

#include "model/resolve/splice_place.h"

#include <cmath>
#include <utility>

namespace model {
namespace {

constexpr const char* shorter_member =
    "set a shorter member there (two of them, each fastened to its own post), or offer a longer "
    "bar";

std::string words(Nm length, engine::TapeStyle shown) {
    return length_in_words(Length::from_nm(length), shown);
}

std::string too_long(const LongPiece& piece, engine::TapeStyle shown) {
    return "it is " + words(piece.length, shown) + " long, and its longest bar gives " +
           words(piece.most, shown) + " between the end trims";
}

Finding cannot(const LongPiece& piece, engine::TapeStyle shown, std::string code) {
    return {.code = std::move(code),
            .severity = Severity::warning,
            .concerns = {piece.member},
            .numbers = {{"length", Length::from_nm(piece.length)},
                        {"most", Length::from_nm(piece.most)}},
            .what = too_long(piece, shown)};
}

}  // namespace

Finding spliced(const LongPiece& piece, const SpliceTold& told, engine::TapeStyle shown) {
    std::string lengths;
    for (std::size_t i = 0; i < told.lengths.size(); ++i) {
        if (i > 0) lengths += i + 1 == told.lengths.size() ? " and " : ", ";
        lengths += words(told.lengths[i], shown);
    }
    const auto percent = std::lround(told.worst_share * 100.0);
    const bool is_one = told.lengths.size() == 2;
    Finding finding{
        .code = "spliced",
        .severity = Severity::note,
        .concerns = {piece.member},
        .numbers = {{"length", Length::from_nm(piece.length)},
                    {"most", Length::from_nm(piece.most)},
                    {"lengths", static_cast<double>(told.lengths.size())}},
        .what = too_long(piece, shown) + "; it is made of " + lengths + " in line, with " +
                told.backings + " behind " + (is_one ? "the butt, " : "each butt, ") +
                std::to_string(percent) + " per cent of a span from its nearer support" +
                (is_one ? "" : " or less") +
                ", away from mid-span, where bending is most; common practice is a fifth to a "
                "quarter",
        .mend = std::string("nothing need be done; to do without a splice, ") + shorter_member};
    Nm at = 0;
    for (std::size_t i = 0; i + 1 < told.lengths.size(); ++i) {
        at += told.lengths[i];
        finding.numbers.push_back({"butt " + std::to_string(i + 1), Length::from_nm(at)});
    }
    return finding;
}

Finding splice_lacks_backing(const LongPiece& piece,
                             const std::string& section,
                             const std::optional<std::string>& flat,
                             engine::TapeStyle shown) {
    Finding finding = cannot(piece, shown, "splice_lacks_backing");
    finding.what +=
        "; it would be spliced, but no flat bar among the stock is as thick as its "
        "walls and narrow enough to lie on them";
    finding.mend = flat ? "add " + *flat + " to the stock, or " : std::string();
    if (!flat) finding.what += ", nor is there one in the catalogue for " + section;
    finding.mend += shorter_member;
    return finding;
}

Finding splice_has_no_room(const LongPiece& piece, Nm backing_length, engine::TapeStyle shown) {
    Finding finding = cannot(piece, shown, "splice_has_no_room");
    finding.numbers.push_back({"backing", Length::from_nm(backing_length)});
    finding.what +=
        "; it would be spliced, but no place in the outer thirds of its spans is clear "
        "of other members for a backing " +
        words(backing_length, shown) + " long";
    finding.mend = std::string("move a member that crosses it there, or put a post under it, or ") +
                   shorter_member;
    return finding;
}

Finding splice_of_too_many(const LongPiece& piece, engine::TapeStyle shown) {
    Finding finding = cannot(piece, shown, "splice_of_too_many");
    finding.what +=
        "; more than " + std::to_string(most_lengths) + " lengths of it would have to be spliced";
    finding.mend = shorter_member;
    return finding;
}

}  // namespace model
