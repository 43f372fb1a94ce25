// Commands of Buy: from whom, their price lists, and what is bought.
#pragma once

namespace editor {

struct Desk;

bool has_suppliers(const Desk& desk);
void buy_from_next(Desk& desk);
void change_supplier(Desk& desk);  // the one that is bought from, else the first

// Somebody sells by a list that is not there yet.
bool lacks_a_list(const Desk& desk);
void begin_lacking_list(Desk& desk);

// In the program that the system opens such files with: that of the supplier who is bought from,
// else of the first.
bool has_list_to_open(const Desk& desk);
void open_price_list(Desk& desk);

bool has_more_to_buy(const Desk& desk);
void buy_all(Desk& desk);

// One that counts, and one that does not: the last of either.
bool has_purchases(const Desk& desk);
bool has_undone_purchases(const Desk& desk);
void take_last_purchase_back(Desk& desk);
void count_last_purchase_again(Desk& desk);
void strike_out_last_purchase(Desk& desk);

}  // namespace editor
