#include "engine/drawing/pdf_painter.h"

#include "engine/drawing/lettering.h"
#include "engine/drawing/printable_text.h"

#include <numbers>
#include <string>
#include <vector>

namespace engine {
namespace {

double radians_of(double deg) { return deg * std::numbers::pi / 180.0; }

}  // namespace

void PdfPainter::take(Ink ink) {
    const InkParts parts = parts_of(ink);
    cairo_set_source_rgb(context_, parts.red / 255.0, parts.green / 255.0, parts.blue / 255.0);
}

void PdfPainter::stroke(const Pen& pen) {
    take(pen.ink);
    cairo_set_line_width(context_, pen.width);
    cairo_set_miter_limit(context_, 4.0);  // as SVG does by itself
    const auto dashes = dash_lengths(pen);
    cairo_set_dash(context_, dashes.data(), static_cast<int>(dashes.size()), 0.0);
    cairo_stroke(context_);
}

void PdfPainter::fill_and_stroke(const Paint& paint) {
    if (paint.fill) {
        take(*paint.fill);
        cairo_set_fill_rule(context_, CAIRO_FILL_RULE_EVEN_ODD);
        cairo_fill_preserve(context_);
    }
    if (paint.pen) stroke(*paint.pen);
    cairo_new_path(context_);
}

void PdfPainter::operator()(const DrawnPath& path) {
    for (const PagePoint& p : path.points) cairo_line_to(context_, p.x, p.y);
    if (path.is_closed) cairo_close_path(context_);
    fill_and_stroke(path.paint);
}

void PdfPainter::operator()(const DrawnArc& arc) {
    const double from = radians_of(arc.from_deg);
    const double to = radians_of(arc.from_deg + arc.sweep_deg);
    // Points: how near the curves lie that cairo makes of the arc. Kept for what follows it would
    // cost much, as cairo finds the extents of strokes by it.
    const double usual = cairo_get_tolerance(context_);
    cairo_set_tolerance(context_, 0.001);
    cairo_new_sub_path(context_);
    // Angles of cairo grow clockwise, as its y does downwards.
    cairo_arc_negative(context_, arc.centre.x, arc.centre.y, arc.radius, -from, -to);
    cairo_set_tolerance(context_, usual);
    if (arc.sweep_deg >= 360.0) cairo_close_path(context_);
    fill_and_stroke(arc.paint);
}

void PdfPainter::operator()(const DrawnLines& lines) {
    for (const auto& [from, to] : lines.lines) {
        cairo_move_to(context_, from.x, from.y);
        cairo_line_to(context_, to.x, to.y);
    }
    stroke(lines.pen);
}

// cairo writes the fonts' advances as whole thousandths, rounded down, but reckons with unrounded
// ones when it places a letter behind another. Letters that it is given where the font has them
// are therefore drawn at the rounded advances, as text_width tells.
void PdfPainter::show(const TextRun& run, double size) {
    std::string characters;
    std::vector<cairo_glyph_t> glyphs;
    std::vector<cairo_text_cluster_t> clusters;  // which bytes a glyph stands for
    for (const TextRun::Letter& letter : run.letters) {
        const std::size_t begin = characters.size();
        append_character(characters, letter.character);
        glyphs.push_back({letter.glyph, (run.at + letter.at) * size, 0.0});
        clusters.push_back({static_cast<int>(characters.size() - begin), 1});
    }
    cairo_set_font_face(context_, fonts_.face(run.font));
    cairo_set_font_size(context_, size);
    cairo_show_text_glyphs(context_, characters.data(), static_cast<int>(characters.size()),
                           glyphs.data(), static_cast<int>(glyphs.size()), clusters.data(),
                           static_cast<int>(clusters.size()), cairo_text_cluster_flags_t{});
}

void PdfPainter::operator()(const DrawnText& text) {
    const Lettering& look = text.lettering;
    const double width = text_width(text.text, look.size, look.weight);
    cairo_save(context_);
    take(look.ink);
    cairo_translate(context_, text.at.x, text.at.y);
    cairo_rotate(context_, -radians_of(look.turned_deg));
    // A text on the line of the one before would be placed behind that, with its roundings. One
    // that lies off by 1/500 of its size gets a place of its own.
    is_odd_text_ = !is_odd_text_;
    const double off = is_odd_text_ ? 0.002 * look.size : 0.0;
    cairo_translate(context_, -before_anchor(width, look.anchor), off);
    for (const TextRun& run : text_runs(text.text, look.weight)) show(run, look.size);
    cairo_restore(context_);
}

void PdfPainter::operator()(const ClipBegin& clip) {
    cairo_save(context_);
    cairo_rectangle(context_, clip.box.left, clip.box.top, clip.box.width, clip.box.height);
    cairo_clip(context_);
}

void PdfPainter::operator()(const ClipEnd&) { cairo_restore(context_); }

}  // namespace engine
