/// Every word on the sheets that leave the house, in the languages that are shipped, beside each other.
///
/// A text has places to fill, as {date}; the others have the same places. The German names of the allergens are
/// those of Regulation (EU) No 1169/2011, Annex II, and the words of the label those of its Articles 9, 24 and
/// 25 and Annex X in the German edition (from memory).
#pragma once

#include <cstddef>
#include <iterator>
#include <string_view>

namespace groat {

/// The languages that are shipped, in the order of the table's columns.
inline constexpr std::string_view shipped_languages[] = {"en", "de"};
inline constexpr std::size_t language_count = std::size(shipped_languages);

struct WordEntry {
    /// The key for words.yaml, and a text in each language.
    template <class... Texts>
    requires(sizeof...(Texts) == language_count) constexpr WordEntry(std::string_view its_key,
                                                                     Texts... its_texts)
        : key(its_key), texts{its_texts...} {}

    [[nodiscard]] constexpr std::string_view english() const { return texts[0]; }

    std::string_view key;
    std::string_view texts[language_count];
};

inline constexpr WordEntry word_table[] = {
    // A quote's head
    {"quote", "Quote {order}", "Angebot {order}"},
    {"order", "Order", "Bestellung"},
    {"for", "For", "Für"},
    {"date", "Date", "Datum"},
    {"wanted for", "Wanted for", "Gewünscht zum"},
    {"valid until", "Valid until", "Gültig bis"},
    {"currency", "Currency", "Währung"},
    // Its lines and sums
    {"count", "Count", "Menge"},
    {"price each", "Price each", "Einzelpreis"},
    {"amount", "Amount", "Betrag"},
    {"subtotal", "Subtotal", "Zwischensumme"},
    {"to the minimum order", "To the minimum order", "Aufschlag zum Mindestbestellwert"},
    {"discount", "Discount", "Rabatt"},
    {"discount of", "Discount of {share}", "Rabatt von {share}"},
    {"discount cut", "Discount, down to the minimum order", "Rabatt bis zum Mindestbestellwert"},
    {"discount of cut", "Discount of {share}, down to the minimum order",
     "Rabatt von {share} bis zum Mindestbestellwert"},
    {"rush surcharge", "Rush surcharge", "Eilzuschlag"},
    {"rush surcharge of", "Rush surcharge of {share}", "Eilzuschlag von {share}"},
    {"delivery", "Delivery", "Lieferung"},
    {"tax", "tax", "Steuer"},
    {"tax added", "{tax} {rate}", "zuzüglich {tax} {rate}"},
    {"tax contained", "of this {tax} {rate}", "darin enthalten {tax} {rate}"},
    // where there are several rates; {amount} is what is taxed, without the tax
    {"tax added on", "{tax} {rate} on {amount}", "zuzüglich {tax} {rate} auf {amount}"},
    {"tax contained on", "of this {tax} {rate} on {amount}",
     "darin enthalten {tax} {rate} auf {amount}"},
    {"total", "Total", "Gesamtbetrag"},
    {"deposit", "Deposit of {share} on ordering", "Anzahlung von {share} bei Bestellung"},
    {"balance", "Balance", "Restbetrag"},
    {"total in cash", "Total if paid in cash", "Gesamtbetrag bei Barzahlung"},
    {"price by quantity", "Price each by quantity", "Einzelpreis nach Menge"},
    {"from count", "From", "Ab"},
    {"to count", "To", "Bis"},
    {"price by quantity holds",
     "Each price holds when that many of the item are ordered and the rest as above.",
     "Jeder Preis gilt, wenn von dieser Ware so viel bestellt wird und vom Übrigen wie oben."},
    {"price by quantity before",
     "These prices are before what is added to the goods or taken off them.",
     "Diese Preise gelten vor dem, was auf die Ware aufgeschlagen oder von ihr abgezogen wird."},
    {"price by quantity ordered", "What is ordered has the price that stands above.",
     "Was bestellt ist, hat den Preis, der oben steht."},
    {"no more asked", "No more is asked for {counts} than for {more}: {total}.",
     "Für {counts} wird nicht mehr verlangt als für {more}: {total}."},
    {"count or count", "{from} or {to}", "{from} oder {to}"},
    {"count to count", "{from} to {to}", "{from} bis {to}"},
    // What is said below
    {"what is in it", "What is in it, and how to keep it", "Allergene und Aufbewahrung"},
    {"contains", "contains {allergens}", "enthält {allergens}"},
    {"no allergens", "no allergen stands in our records",
     "in unseren Unterlagen steht kein Allergen"},
    {"notes", "For this order", "Zu dieser Bestellung"},
    {"terms", "Terms", "Bedingungen"},
    {"prices hold until", "These prices hold until {date}.", "Diese Preise gelten bis {date}."},
    {"prices hold until wanted", "These prices hold until {date}, the day it is wanted.",
     "Diese Preise gelten bis {date}, dem gewünschten Tag."},
    {"please note", "Please note", "Bitte beachten"},
    {"allergen caution",
     "Allergens are listed from our records of what we buy, not from a laboratory, and all is made "
     "in one kitchen where traces can pass over. If anyone who will eat this has an allergy, ask "
     "us before you order.",
     "Die Allergene nennen wir nach den Angaben zu unseren Zutaten, nicht nach Laborprüfung; "
     "gebacken wird alles in einer Backstube, Spuren sind möglich. Wer eine Allergie hat, frage "
     "uns bitte vor der Bestellung."},
    {"cold caution",
     "What is marked to keep cold spoils out of the cold: collect it cooled and put it away at "
     "once.",
     "Was kühl zu lagern ist, verdirbt ohne Kühlung: bitte gekühlt abholen und gleich in den "
     "Kühlschrank stellen."},
    {"tax caution", "Tax is calculated at the rate shown; local law decides.",
     "Die Steuer ist mit dem genannten Satz gerechnet; maßgeblich ist das geltende Recht."},
    {"no tax caution", "No tax is calculated here; local law decides.",
     "Eine Steuer ist hier nicht gerechnet; maßgeblich ist das geltende Recht."},
    // How it keeps
    {"keep at room", "keep dry at room temperature", "trocken bei Zimmertemperatur lagern"},
    {"keep cool", "keep cool and dry", "kühl und trocken lagern"},
    {"keep cold", "keep cold, at or below 5 °C (41 °F)", "gekühlt bei höchstens 5 °C lagern"},
    {"keep frozen", "keep frozen", "tiefgekühlt lagern"},
    {"eat today", "eat on the day it is made", "am Tag der Herstellung verzehren"},
    {"eat within", "eat within {days} days", "innerhalb von {days} Tagen verzehren"},
    // A label
    {"ingredients", "Ingredients", "Zutaten"},
    {"small amounts", "contains {share} or less of:", "enthält höchstens {share}:"},
    {"allergens", "Allergens", "Allergene"},
    {"contains statement", "Contains: {allergens}", "Enthält: {allergens}"},
    {"net quantity", "Weight", "Nettofüllmenge"},
    // what stands there; "net wt" is said in the United States
    {"net weight", "Net weight {weight}", "{weight}"},
    {"net wt", "Net wt {weight}", "{weight}"},
    {"pieces", "Pieces", "Stück"},
    {"storage", "Storage", "Aufbewahrung"},
    {"made", "Made", "Hergestellt am"},
    {"use by", "Use by", "Zu verbrauchen bis"},
    {"best before", "Best before", "Mindestens haltbar bis"},
    {"made by", "Made by", "Hergestellt von"},
    {"as used", "As used, for the maker", "Wie verarbeitet, für die Backstube"},
    {"weight", "Weight", "Gewicht"},
    {"share", "Share", "Anteil"},
    {"before you print", "Before you print", "Vor dem Druck"},
    {"check labels",
     "Allergens come from the books, not from a laboratory: check the labels of what was bought, "
     "and cross-contact in the kitchen.",
     "Die Allergene stammen aus den Büchern, nicht aus dem Labor: die Etiketten der Zutaten und "
     "mögliche Spuren in der Backstube prüfen."},
    {"cold by law",
     "Fillings that need the cold keep at or below 5 °C / 41 °F (FDA Food Code 2022, 3-501.16); "
     "home-kitchen food law often bars them. Local codes and licensed practice decide.",
     "Kühlbedürftige Füllungen halten bei höchstens 5 °C (FDA Food Code 2022, 3-501.16); "
     "maßgeblich sind das geltende Lebensmittelrecht und die zuständige Behörde."},
    {"cold for days",
     "It is said to keep {days} days in the cold; ready-to-eat food that needs the cold is held at "
     "most 7 days, the day of making being day one (FDA Food Code 2022, 3-501.17).",
     "Es soll gekühlt {days} Tage halten; verzehrfertige Ware, die Kühlung braucht, hält höchstens "
     "7 Tage, der Tag der Herstellung mitgezählt (FDA Food Code 2022, 3-501.17)."},
    {"weigh it", "The net weight is what the formula gives, rounded down: weigh what you pack.",
     "Die Nettofüllmenge folgt aus der Rezeptur, abgerundet: wiegen, was verpackt wird."},
    {"law decides",
     "Local law decides what a label must say, and how large: this gathers what the books know.",
     "Was auf einem Etikett stehen muss und wie groß, bestimmt das geltende Recht: hier steht, was "
     "die Bücher wissen."},
    {"kept as its parts",
     "How to keep '{item}' is what its parts state: say it of the item itself, with 'keep' in its "
     "formula.",
     "Die Aufbewahrung von '{item}' folgt aus seinen Teilen: bei der Ware selbst angeben, mit "
     "'keep' in der Rezeptur."},
    {"part keeps worse",
     "It holds '{part}', for which the books say: {keeping}. Be sure that it keeps as stated here.",
     "Es enthält '{part}', wofür in den Büchern steht: {keeping}. Prüfen, ob es so hält wie hier "
     "angegeben."},
    {"name the nuts",
     "Tree nuts are to be named by their kind: write almond, walnut or another under 'allergens'.",
     "Schalenfrüchte sind mit ihrer Art zu nennen: almond, walnut oder eine andere unter "
     "'allergens' schreiben."},
    {"name the fish",
     "Fish and crustaceans are to be named by their kind: write cod, shrimp or another under "
     "'allergens'.",
     "Fisch und Krebstiere sind mit ihrer Art zu nennen: cod, shrimp oder eine andere unter "
     "'allergens' schreiben."},
    {"sulphites named",
     "Sulphites are none of the nine allergens, so the sentence after the ingredients leaves them "
     "out; from 10 ppm of the food on they are to be declared, and stand at their ingredient (21 "
     "CFR 101.100(a)(4)).",
     "Sulfite gehören nicht zu den neun Allergenen und fehlen daher im Satz nach den Zutaten; ab "
     "10 ppm der Ware sind sie anzugeben und stehen bei ihrer Zutat (21 CFR 101.100(a)(4))."},
    {"cold inside",
     "It holds '{part}', which is kept cold and is not baked in it: keep it at or below 5 °C / 41 "
     "°F (FDA Food Code 2022, 3-501.16), and say so with 'keep' in its formula.",
     "Es enthält '{part}', was gekühlt gelagert und hier nicht gebacken wird: bei höchstens 5 °C "
     "lagern (FDA Food Code 2022, 3-501.16) und mit 'keep' in der Rezeptur angeben."},
    {"tolerable shortfall",
     "A pack may fall short of {weight} by {shortfall} g and no more, and packs on average not at "
     "all (76/211/EEC, Annex I).",
     "Eine Packung darf {weight} um höchstens {shortfall} g unterschreiten, im Mittel dürfen es "
     "die Packungen nicht (76/211/EWG, Anhang I)."},
    // Allergens, under the names that the books use
    {"milk", "milk", "Milch"},
    {"egg", "egg", "Eier"},
    {"wheat", "wheat", "Weizen"},
    {"spelt", "spelt", "Dinkel"},
    {"khorasan wheat", "khorasan wheat", "Khorasan-Weizen"},
    {"rye", "rye", "Roggen"},
    {"barley", "barley", "Gerste"},
    {"oats", "oats", "Hafer"},
    {"almond", "almond", "Mandeln"},
    {"hazelnut", "hazelnut", "Haselnüsse"},
    {"walnut", "walnut", "Walnüsse"},
    {"cashew", "cashew", "Kaschunüsse"},
    {"pecan", "pecan", "Pecannüsse"},
    {"brazil nut", "brazil nut", "Paranüsse"},
    {"pistachio", "pistachio", "Pistazien"},
    {"macadamia", "macadamia", "Macadamianüsse"},
    {"pine nut", "pine nut", "Pinienkerne"},
    {"tree nuts", "tree nuts", "Schalenfrüchte"},
    {"peanut", "peanut", "Erdnüsse"},
    {"soy", "soy", "Sojabohnen"},
    {"sesame", "sesame", "Sesamsamen"},
    {"fish", "fish", "Fisch"},
    {"anchovy", "anchovy", "Sardellen"},
    {"cod", "cod", "Kabeljau"},
    {"haddock", "haddock", "Schellfisch"},
    {"herring", "herring", "Hering"},
    {"mackerel", "mackerel", "Makrele"},
    {"salmon", "salmon", "Lachs"},
    {"trout", "trout", "Forelle"},
    {"tuna", "tuna", "Thunfisch"},
    {"crustaceans", "crustaceans", "Krebstiere"},
    {"crab", "crab", "Krabben"},
    {"crayfish", "crayfish", "Flusskrebse"},
    {"lobster", "lobster", "Hummer"},
    {"shrimp", "shrimp", "Garnelen"},
    {"molluscs", "molluscs", "Weichtiere"},
    {"clam", "clam", "Venusmuscheln"},
    {"mussel", "mussel", "Miesmuscheln"},
    {"oyster", "oyster", "Austern"},
    {"scallop", "scallop", "Jakobsmuscheln"},
    {"squid", "squid", "Tintenfisch"},
    {"celery", "celery", "Sellerie"},
    {"mustard", "mustard", "Senf"},
    {"lupin", "lupin", "Lupinen"},
    {"sulphites", "sulphites", "Schwefeldioxid und Sulphite"},
    // An order to a supplier
    {"order to", "Order to {supplier}", "Bestellung an {supplier}"},
    {"code", "Code", "Artikelnummer"},
    {"pack", "Pack", "Gebinde"},
    {"packs", "Packs", "Anzahl"},
    {"pack of", "pack of {count}", "Packung mit {count}"},
    {"goods", "Goods", "Warenwert"},
    {"supplier terms",
     "At your listed prices; freight, deposit, delivery and tax as agreed. Please tell us if a "
     "price has changed, and of any change in what the goods contain.",
     "Zu Ihren Listenpreisen; Fracht, Pfand, Lieferung und Steuer wie vereinbart. Bitte teilen Sie "
     "uns mit, wenn sich ein Preis geändert hat und wenn sich an den Zutaten der Ware etwas "
     "ändert."},
    // Days
    {"long date", "{day} {month} {year}", "{day}. {month} {year}"},
    {"january", "January", "Januar"},
    {"february", "February", "Februar"},
    {"march", "March", "März"},
    {"april", "April", "April"},
    {"may", "May", "Mai"},
    {"june", "June", "Juni"},
    {"july", "July", "Juli"},
    {"august", "August", "August"},
    {"september", "September", "September"},
    {"october", "October", "Oktober"},
    {"november", "November", "November"},
    {"december", "December", "Dezember"},
};
inline constexpr std::size_t word_count = sizeof(word_table) / sizeof(word_table[0]);

/// The place of a key in the table; `word_count` where it has none.
[[nodiscard]] constexpr std::size_t find_word(std::string_view key) {
    std::size_t i = 0;
    while (i < word_count && word_table[i].key != key) ++i;
    return i;
}

} // namespace groat
