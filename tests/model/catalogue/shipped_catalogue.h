// The catalogue that the program ships, read once for all tests of this folder.
#pragma once

#include "model/catalogue/catalogue.h"

const model::Catalogue& shipped_catalogue();
