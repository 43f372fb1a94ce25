// Fields of formulas that say below themselves why what was typed gives no value.
#pragma once

#include "editor/derived.h"
#include "model/project/project.h"

#include <array>
#include <functional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace editor {

// Of which empty fields a form complains: one that nobody has touched is not wrong yet.
struct FieldsAsked {
    bool all = false;                            // it was to be put
    std::set<std::string, std::less<>> typed{};  // have held something
};

// Whether every formula has a value is remembered over the lines of one form.
class CheckedFields {
public:
    // Without `asked` every empty field is told.
    explicit CheckedFields(const Derived& derived, FieldsAsked* asked = nullptr)
        : derived_{derived}, asked_{asked} {}

    // One short field behind a word. Where it may be empty the hint says what then holds.
    void draw_length(std::string_view word,
                     std::string_view name,
                     model::Formula& formula,
                     std::string_view hint,
                     bool may_be_empty = false);
    void draw_angle(std::string_view word,
                    std::string_view name,
                    model::Formula& formula,
                    std::string_view hint);

    // Two short fields in one line.
    struct Length {
        std::string_view word;
        std::string_view name;
        model::Formula& formula;
        std::string_view hint;
        bool may_be_empty = false;
    };
    void draw_lengths(Length first, Length second);

    // Three fields X, Y, Z: "NAME x" and so on.
    void draw_place(std::string_view word, std::string_view name, model::Place& place);
    void draw_turn(std::string_view word,
                   std::string_view name,
                   std::array<model::Formula, 3>& angles);

    // A line of a survey: a letter that a drawing shows, what to measure, and the field at the
    // right. Gives whether the field has the focus.
    bool draw_reading(char letter,
                      std::string_view word,
                      std::string_view name,
                      model::Formula& formula,
                      std::string_view hint,
                      bool may_be_empty);

    // A field of a table's cell; faults are told by draw_faults behind the table.
    bool draw_cell(std::string_view name,
                   std::string_view what,
                   model::Formula& formula,
                   bool may_be_empty = false);

    // What is wrong in the fields since the last call, one line each.
    void draw_faults();

    bool are_all_known() const { return are_all_known_; }

private:
    bool is_asked(std::string_view name, const model::Formula& formula);
    void check(std::string_view name,
               std::string_view what,
               const model::Formula& formula,
               engine::QuantityKind kind,
               bool may_be_empty);

    struct Fault {
        std::string name;
        std::string text;
    };

    const Derived& derived_;
    FieldsAsked* asked_;
    std::vector<Fault> faults_;
    bool are_all_known_ = true;
};

}  // namespace editor
