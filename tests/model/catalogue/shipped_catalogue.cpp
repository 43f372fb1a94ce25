#include "tests/model/catalogue/shipped_catalogue.h"

#include <catch2/catch.hpp>

const model::Catalogue& shipped_catalogue() {
    static const auto loaded = model::load_catalogue(BARWRIGHT_ASSETS);
    if (!loaded) FAIL(to_text(loaded.error()));
    return *loaded;
}
