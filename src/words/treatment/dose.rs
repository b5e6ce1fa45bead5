//! Chlorine by the bottle.

use crate::engine::checks::{Check, Figure, chosen};
use crate::engine::treatment::dose::{Purpose, Stock};
use crate::quantity::following::{GRAMS_AN_OUNCE, MILLILITRES_A_FLUID_OUNCE};
use crate::quantity::{Kind, Units, shown};
use crate::site::details::Detail;
use crate::words::checks::Text;

pub(in crate::words) const TEXT: Text = Text {
    title: phrase!("Chlorine dose", "Dosis de cloro"),
    formula: phrase!(
        "Amount = mg/L × litres ÷ 1,000 ÷ strength. Left = 1 ÷ (1 + days ÷ half-life).",
        "Cantidad = mg/L × litros ÷ 1000 ÷ concentración. Queda = 1 ÷ (1 + días ÷ vida media).",
    ),
    source: phrase!(
        "enHealth Guidance on use of rainwater tanks (2011) section 5.2: 40\u{a0}mL of 12.5\u{a0}% or 7 g of 75\u{a0}% for 1,000\u{a0}L, \
         0.5\u{a0}mg/L after 30 minutes. Keeping 1\u{a0}mg/L: University of Hawaii; shock 50\u{a0}mg/L: AWWA C652; age: White's \
         Handbook (all three from memory, the last good to a factor of two in time).",
        "enHealth Guidance on use of rainwater tanks (2011), sección 5.2: 40\u{a0}mL de 12,5\u{a0}% o 7 g de 75\u{a0}% para \
         1000\u{a0}L, 0,5\u{a0}mg/L a los 30 minutos. Mantener 1\u{a0}mg/L: University of Hawaii; choque de 50\u{a0}mg/L: AWWA \
         C652; edad: White's Handbook (las tres de memoria; la última, con un factor de dos en el tiempo).",
    ),
    assumes: phrase!(
        "Plain unscented bleach without thickener or colour-safe additives. Dirt eats chlorine, and over pH 8, as in a new \
         concrete tank, it acts many times slower: measure what is left.",
        "Cloro doméstico (blanqueador o lejía) simple, sin perfume, espesante ni aditivos que cuidan el color. La suciedad consume el cloro, y con pH de más de 8, como en un tanque nuevo de concreto, actúa mucho más despacio: \
         mide lo que queda.",
    ),
    caution: phrase!(
        "Chlorine burns skin and eyes, and its gas kills: gloves, goggles, open air. Add it to water, never water to \
         it; never mix it with acid, ammonia, or another chlorine. Never climb into the tank.",
        "El cloro quema la piel y los ojos, y su gas mata: guantes, gafas de protección, aire libre. Échalo al \
         agua, nunca agua sobre él; nunca lo mezcles con ácido, amoníaco ni otro cloro. Nunca te metas en el \
         tanque.",
    ),
};

/// An amount of stock: a liquid in millilitres and US fluid ounces, granules in grams and ounces.
fn amount(check: &Check, stock: Stock) -> String {
    let amount = check.figure(Figure::StockAmount);
    let ounces =
        shown::significant(amount / if stock.is_liquid() { MILLILITRES_A_FLUID_OUNCE } else { GRAMS_AN_OUNCE }, 2);
    let text = shown::significant(amount, 2);
    if stock.is_liquid() { format!("{text} mL ({ounces} fl oz)") } else { format!("{text} g ({ounces} oz)") }
}

pub(in crate::words) fn said(check: &Check, units: &Units) -> (String, String) {
    let stock = Stock::ALL[chosen(check.went_in(Detail::Stock)).min(Stock::ALL.len() - 1)];
    let purpose = Purpose::ALL[chosen(check.went_in(Detail::DosePurpose)).min(Purpose::ALL.len() - 1)];
    let water = shown::figure(check.went_in(Detail::DosedWater), Kind::Volume, units);
    let (water, with_less) = if check.was_entered(Detail::DosedWater) {
        (water, "")
    } else if check.figure(Figure::ContentNow).is_finite() {
        (say!("what stands in it by the readings ({water})", "lo que tiene según las lecturas ({water})", water), "")
    } else {
        let with_less = said!(
            "With less in it this would be too strong: enter how much there is. ",
            "Con menos agua sería demasiado fuerte: escribe cuánta hay. ",
        );
        (
            say!("the tank as full as it gets ({water})", "el tanque lo más lleno que puede estar ({water})", water),
            with_less,
        )
    };
    let left = check.figure(Figure::StrengthLeft);
    if check.figure(Figure::StockAmount).is_nan() {
        return (phrase!("Nothing to dose.", "Nada que dosificar.").to_owned(), String::new());
    }
    let strength = if left < 1.0 {
        say!(
            ", if about {left} of its strength is left",
            ", si conserva más o menos {left} de su concentración",
            left = crate::words::percent(left)
        )
    } else {
        String::new()
    };
    let verdict = say!(
        "{amount} of {stock} bring {water} to {wanted} mg/L{strength}.",
        "{amount} de {stock} llevan {water} a {wanted} mg/L{strength}.",
        amount = amount(check, stock),
        stock = super::super::checks::details::options(Detail::Stock)[stock as usize],
        wanted = shown::significant(purpose.milligrams_a_litre(), 2),
        water,
        strength
    );
    let to_do = match purpose {
        Purpose::Keep | Purpose::Disinfect => said!(
            "Shut the valves to joined tanks, or dose each of them. Mix it in a bucket of the tank's water, pour it in well spread, wait at least an hour. After 30 minutes a \
             test should find at least 0.5\u{a0}mg/L; if not, dose again. Over 4\u{a0}mg/L don't drink it.",
            "Cierra las válvulas hacia tanques unidos, o dosifica cada uno. Mézclalo en un balde con agua del tanque, viértelo bien repartido, espera al menos una hora. A los 30 \
             minutos una medición debe dar al menos 0,5\u{a0}mg/L; si no, dosifica otra vez. Con más de 4\u{a0}mg/L no la \
             bebas.",
        ),
        Purpose::Shock => said!(
            "Take carbon and membrane cartridges out first. Run it until every tap smells of chlorine and let it stand for \
             6 hours; then run it to waste, not into a stream or septic tank, \
             until a test finds under 4\u{a0}mg/L. Not for drinking.",
            "Saca antes los cartuchos de carbón y las membranas. Hazla correr hasta que cada grifo huela a cloro y déjala \
             reposar 6 horas; luego hazla correr a un desagüe, no a un arroyo \
             ni a una fosa séptica, hasta que una medición dé menos de 4\u{a0}mg/L. No es para beber.",
        ),
    };
    (verdict, [with_less, to_do].concat())
}

/// A jug in an emergency, with this stock.
pub(in crate::words) fn lines(check: &Check) -> Vec<(String, String)> {
    use crate::engine::treatment::dose::drops;
    let stock = Stock::ALL[chosen(check.went_in(Detail::Stock)).min(Stock::ALL.len() - 1)];
    let left = check.figure(Figure::StrengthLeft);
    let jug = |cloudy| {
        drops(stock, cloudy, left).map(|(litre, gallon)| {
            say!(
                "{litre} drops a litre ({gallon} a US gallon), then 30 minutes",
                "{litre} gotas por litro ({gallon} por galón de EE. UU.), luego 30 minutos",
                litre,
                gallon
            )
        })
    };
    let clear = jug(false).map(|text| {
        (
            phrase!("A jug of clear water, in an emergency", "Una jarra de agua clara, en una emergencia").to_owned(),
            text,
        )
    });
    let cloudy = jug(true).map(|text| (phrase!("The same, cloudy", "Lo mismo, turbia").to_owned(), text));
    clear.into_iter().chain(cloudy).collect()
}
