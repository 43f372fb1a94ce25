#include "engine/drawing/pdf.h"

#include "engine/drawing/document_fault.h"
#include "engine/drawing/pdf_date.h"
#include "engine/drawing/pdf_painter.h"
#include "engine/drawing/printable_text.h"

#include <cairo-pdf.h>

#include <algorithm>
#include <memory>
#include <vector>

namespace engine {
namespace {

constexpr double points_per_mm = 72.0 / 25.4;

struct SurfaceGone {
    void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
};
using Surface = std::unique_ptr<cairo_surface_t, SurfaceGone>;

struct ContextGone {
    void operator()(cairo_t* context) const { cairo_destroy(context); }
};
using Context = std::unique_ptr<cairo_t, ContextGone>;

cairo_status_t append_bytes(void* text, const unsigned char* bytes, unsigned int count) {
    static_cast<std::string*>(text)->append(reinterpret_cast<const char*>(bytes), count);
    return CAIRO_STATUS_SUCCESS;
}

void describe(cairo_surface_t* surface, const Document& document) {
    const std::string title = printable_text(document.title);
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, title.c_str());
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATOR, "Barwright");
    const std::string date = date_of_file();
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE, date.c_str());
}

void add_bookmarks(cairo_surface_t* surface, const std::vector<Bookmark>& bookmarks) {
    std::vector<int> above{CAIRO_PDF_OUTLINE_ROOT};  // the last one of each level
    for (const Bookmark& bookmark : bookmarks) {
        const auto level = static_cast<std::size_t>(std::max(bookmark.level, 0));
        above.resize(std::min(above.size(), level + 1));
        const std::string title = printable_text(bookmark.title);
        const std::string place = "page=" + std::to_string(bookmark.page + 1);
        above.push_back(cairo_pdf_surface_add_outline(surface, above.back(), title.c_str(),
                                                      place.c_str(), CAIRO_PDF_OUTLINE_FLAG_OPEN));
    }
}

void write_pages(cairo_surface_t* surface, cairo_t* context, const std::vector<Page>& pages) {
    PdfPainter painter{context};
    for (const Page& page : pages) {
        cairo_pdf_surface_set_size(surface, page.size().width * points_per_mm,
                                   page.size().height * points_per_mm);
        cairo_save(context);
        cairo_scale(context, points_per_mm, points_per_mm);
        for (const PageItem& item : page.items()) std::visit(painter, item);
        cairo_restore(context);
        cairo_show_page(context);
    }
}

Error not_made(cairo_status_t status) {
    return {ErrorCode::out_of_range, "",
            std::string("the PDF could not be made: ") + cairo_status_to_string(status)};
}

}  // namespace

Result<std::string> pdf_bytes(const Document& document) {
    if (auto error = document_fault(document)) return *std::move(error);
    std::string bytes;
    const PaperSize first = document.pages.front().size();
    const Surface surface{cairo_pdf_surface_create_for_stream(
        append_bytes, &bytes, first.width * points_per_mm, first.height * points_per_mm)};
    cairo_pdf_surface_restrict_to_version(surface.get(), CAIRO_PDF_VERSION_1_5);
    describe(surface.get(), document);
    add_bookmarks(surface.get(), document.bookmarks);
    {
        const Context context{cairo_create(surface.get())};
        write_pages(surface.get(), context.get(), document.pages);
        if (const auto status = cairo_status(context.get()); status != CAIRO_STATUS_SUCCESS)
            return not_made(status);
    }
    cairo_surface_finish(surface.get());
    if (const auto status = cairo_surface_status(surface.get()); status != CAIRO_STATUS_SUCCESS)
        return not_made(status);
    return bytes;
}

}  // namespace engine
