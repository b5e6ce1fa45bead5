//! What a result of a water test means, and what to do next.

use chrono::NaiveDate;

use crate::engine::treatment::limits::{Guards, Judgement, Limit, Whose, limits};
use crate::engine::treatment::results::Result;
use crate::language::Phrase;
use crate::quantity::shown;
use crate::site::diary::{Parameter, TestResult};
use crate::words::date;
use crate::words::diary::{found, parameter_name};

/// The head of the section.
pub const TITLE: Phrase = phrase!("Water tests", "Análisis de agua");
/// Where there are none.
pub const NONE: Phrase = phrase!(
    "No test of this water is in the diary. The first that tells something: E.\u{a0}coli, turbidity, pH, lead.",
    "En el diario no hay ningún análisis de esta agua. Los primeros que dicen algo: E.\u{a0}coli, turbidez, pH, \
     plomo.",
);
/// Who decides, and what a strip is worth.
pub const ABOUT: Phrase = phrase!(
    "Limits: WHO guidelines, 4th edition, and EPA (40 CFR 141 and 143), from memory. A strip or home kit \
     is a hint; an accredited laboratory, local codes and a licensed practitioner decide.",
    "Límites: guías de la OMS, 4.ª edición, y EPA (40 CFR 141 y 143), de memoria. Una tira o un kit casero \
     da un indicio; deciden un laboratorio acreditado, las normas locales y un profesional con licencia.",
);

/// The unit of a parameter, in words where it has any.
pub fn unit(of: Parameter) -> &'static str {
    match of {
        Parameter::EColi | Parameter::Coliforms => said!("in 100\u{a0}mL", "en 100\u{a0}mL"),
        Parameter::Asbestos => said!("million/L", "millones/L"),
        _ => of.unit(),
    }
}

/// How a result is typed.
pub fn hint(of: Parameter) -> String {
    let unit = unit(of);
    match of {
        Parameter::EColi | Parameter::Coliforms => {
            say!(
                "A number {unit}; or “none”, “present”, “<1”.",
                "Un número {unit}; o «ninguna», «presente», «<1».",
                unit
            )
        }
        _ if unit.is_empty() => phrase!("A number.", "Un número.").to_owned(),
        _ => say!(
            "A number in {unit}, or with its own unit; “<2” where the laboratory says less than 2.",
            "Un número en {unit}, o con su propia unidad; «<2» donde el laboratorio dice menos de 2.",
            unit
        ),
    }
}

/// The labels of the form.
pub const TESTED_FOR: Phrase = phrase!("Tested for", "Análisis de");
/// The result that was written down last.
pub fn written(of: Parameter, what: TestResult, on: NaiveDate) -> String {
    say!(
        "Written down last: {name}, {found}, {date}.",
        "Lo último anotado: {name}, {found}, {date}.",
        name = parameter_name(of),
        found = found(of, what),
        date = date(on)
    )
}

/// The field for the value.
pub const FOUND: Phrase = phrase!("Found", "Resultado");
/// The field for the day.
pub const SAMPLED: Phrase = phrase!("Sample taken on", "Muestra tomada el");
/// The button.
pub const WRITE: Phrase = phrase!("Write it into the diary", "Anotar en el diario");
/// The button that opens the diary's own form.
pub const WRITE_A_TEST: Phrase = phrase!("Write a water test", "Anotar un análisis de agua");
/// Said of a text that is no result.
pub const NOT_A_RESULT: Phrase = phrase!(
    "Write a number in the unit below, “<” and a number, “none” or “present”.",
    "Escribe un número en la unidad de abajo, «<» y un número, «ninguna» o «presente».",
);

/// A judgement in a word.
pub fn word(judgement: Judgement) -> &'static str {
    match judgement {
        Judgement::NoLimit => said!("To know", "Para saber"),
        Judgement::Within => said!("Within limits", "Dentro de los límites"),
        Judgement::CannotTell => said!("Can't tell", "No se puede decir"),
        Judgement::Watch => said!("Look into it", "Revísalo"),
        Judgement::Fails => said!("Over the limit", "Supera el límite"),
    }
}

fn number(value: f64, of: Parameter) -> String {
    let unit = unit(of);
    let blank = if unit.is_empty() { "" } else { "\u{a0}" };
    format!("{}{blank}{unit}", shown::significant(value, 3))
}

/// A limit: "WHO: at most 10 µg/L".
fn limit(limit: &Limit) -> String {
    let whose = match limit.whose {
        Whose::Who => said!("WHO", "OMS"),
        Whose::Epa => "EPA",
    };
    let range = if limit.most == 0.0 {
        phrase!("none in 100\u{a0}mL", "ninguna bacteria en 100\u{a0}mL").to_owned()
    } else if limit.most.is_infinite() {
        say!("at least {least}", "al menos {least}", least = number(limit.least, limit.of))
    } else if limit.least > 0.0 {
        format!("{}–{}", shown::significant(limit.least, 3), number(limit.most, limit.of))
    } else {
        say!("at most {most}", "como máximo {most}", most = number(limit.most, limit.of))
    };
    let guards = match limit.guards {
        Guards::Health => "",
        Guards::Treatment if limit.most == 0.0 => said!(" where treatment works", " si el tratamiento funciona"),
        Guards::Treatment => said!(" for treatment to work", " para que el tratamiento funcione"),
        Guards::Taste => said!(" for taste and pipes", " por el sabor y las tuberías"),
    };
    format!("{whose}: {range}{guards}")
}

/// All limits of a parameter in a sentence.
pub fn limits_of(of: Parameter, chlorinated: bool) -> String {
    let told: Vec<String> = limits(of, chlorinated).map(limit).collect();
    if told.is_empty() {
        phrase!("No limit is published for it.", "No hay ningún límite publicado.").to_owned()
    } else {
        format!("{}.", told.join("; "))
    }
}

/// What a parameter tells.
pub fn meaning(of: Parameter) -> &'static str {
    match of {
        Parameter::EColi => said!(
            "A sign that droppings got into the water: germs that make people ill may be in it.",
            "Señal de que entraron excrementos en el agua: puede haber en ella gérmenes que enferman a la gente.",
        ),
        Parameter::Coliforms => said!(
            "They live in soil and on leaves too: a sign that dirt gets in or a filter lets through.",
            "Viven también en el suelo y en las hojas: señal de que entra suciedad o de que un filtro deja pasar.",
        ),
        Parameter::Turbidity => said!(
            "Cloudy water shades germs from light and eats chlorine.",
            "El agua turbia protege a los gérmenes de la luz y consume el cloro.",
        ),
        Parameter::Ph => said!(
            "Rain is a little acid and eats copper, zinc and lead; concrete makes it alkaline.",
            "La lluvia es un poco ácida y corroe cobre, zinc y plomo; el concreto la vuelve alcalina.",
        ),
        Parameter::FreeChlorine => said!(
            "What is left of chlorine to act; half an hour after a dose it should be 0.5\u{a0}mg/L at least.",
            "Lo que queda de cloro para actuar; media hora después de una dosis debe ser al menos 0,5\u{a0}mg/L.",
        ),
        Parameter::Lead => said!(
            "From flashings, solder, old paint, brass. It harms children's brains; there is no safe amount.",
            "De tapajuntas, soldadura, pintura vieja, latón. Daña el cerebro de los niños; no hay cantidad segura.",
        ),
        Parameter::Copper => said!(
            "From pipes and gutters, most in water that stood overnight.",
            "De tuberías y canaletas, sobre todo en agua que reposó toda la noche.",
        ),
        Parameter::Zinc => said!(
            "From galvanized roofs and tanks: taste rather than health.",
            "De techos y tanques galvanizados: es asunto de sabor más que de salud.",
        ),
        Parameter::Cadmium => {
            said!("From galvanizing and soot: it harms kidneys.", "Del galvanizado y del hollín: daña los riñones.")
        }
        Parameter::Arsenic => said!(
            "From treated timber and dust: it causes cancer over the years.",
            "De madera tratada y polvo: con los años causa cáncer.",
        ),
        Parameter::Chromium => said!("From treated timber and coatings.", "De madera tratada y revestimientos."),
        Parameter::Iron => said!("Rust: stains and taste.", "Óxido: manchas y sabor."),
        Parameter::Manganese => said!(
            "From soil, sludge and dust: black stains. Too much may harm babies' brains; WHO's value is provisional.",
            "Del suelo, el lodo y el polvo: manchas negras. En exceso puede dañar el cerebro de los bebés; el valor \
             de la OMS es provisional.",
        ),
        Parameter::Aluminium => said!(
            "From bare aluminium that acid rain eats, and from dust. WHO sets no limit; from its safe intake 900\u{a0}µg/L follow.",
            "De aluminio desnudo que la lluvia ácida corroe, y del polvo. La OMS no fija límite; de su ingesta \
             segura resultan 900\u{a0}µg/L.",
        ),
        Parameter::Benzopyrene => said!(
            "From soot, tar and bitumen: it causes cancer over the years.",
            "De hollín, alquitrán y asfalto: con los años causa cáncer.",
        ),
        Parameter::Asbestos => said!(
            "From old roofing. WHO sets no limit for drinking; breathing the dust is what kills.",
            "De techos viejos. La OMS no fija límite para beber; lo que mata es respirar el polvo.",
        ),
        Parameter::Nitrate => said!(
            "From droppings and fertilizer: dangerous to babies on the bottle.",
            "De excrementos y fertilizantes: peligroso para los bebés que toman biberón.",
        ),
        Parameter::Conductivity => said!(
            "How much is dissolved: rain has little, sea spray and dust bring more.",
            "Cuánto hay disuelto: la lluvia tiene poco; el rocío del mar y el polvo traen más.",
        ),
        Parameter::Transmittance => said!(
            "How clear the water is to an ultraviolet lamp; the dose at this tap is reckoned with it.",
            "Qué tan clara es el agua para una lámpara ultravioleta; con este valor se calcula la dosis en este \
             grifo.",
        ),
        Parameter::Other => "",
    }
}

/// How long to boil; where nobody said how high the house stands, for high places too.
fn boil(minutes: Option<f64>) -> String {
    match minutes {
        Some(minutes) => say!("{minutes} min", "{minutes} min", minutes = shown::significant(minutes, 2)),
        None => phrase!(
            "1 min (3 min above 5,000\u{a0}ft or 1,500\u{a0}m)",
            "1 min (3 min a más de 1500\u{a0}m de altitud)"
        )
        .to_owned(),
    }
}

/// What to drink while germs are in the water: boiled, or other water where something is in it that boiling leaves there.
pub fn drink(minutes: Option<f64>, stays: Option<Parameter>) -> String {
    match stays {
        None => say!(
            "Boil every glass for {boil}, also for teeth, salad and ice.",
            "Hierve cada vaso {boil}, también para los dientes, las ensaladas y el hielo.",
            boil = boil(minutes)
        ),
        Some(what) => say!(
            "Drink, cook and brush teeth with other water: boiling doesn't make this fit. {what} is over its limit too.",
            "Bebe, cocina y cepíllate los dientes con otra agua: hervir no hace apta esta. {what} también supera su límite.",
            what = parameter_name(what)
        ),
    }
}

/// What to do about germs.
fn against_germs(drink: &str) -> String {
    say!(
        "{drink} Look for droppings, dead animals and open \
         lids; clean the screens; disinfect the tank (its sheet has the dose); change or clean filters and lamp. Test \
         again at the same place when the chlorine is gone, and once more a week later.",
        "{drink} Busca excrementos, animales \
         muertos y tapas abiertas; limpia las mallas; desinfecta el tanque (su hoja tiene la dosis); cambia o limpia \
         filtros y lámpara. Repite el análisis en el mismo lugar cuando ya no quede cloro, y otra vez una semana \
         después.",
        drink
    )
}

/// What is left to do once the tank was disinfected.
fn after_disinfection(on: NaiveDate, drink: &str) -> String {
    say!(
        "{drink} It was disinfected on {on}; whether that helped, only a test tells: at the same place when the chlorine is \
         gone, and once more a week later.",
        "{drink} Se desinfectó el {on}; si sirvió, solo lo dice un análisis: en el mismo lugar cuando ya no quede cloro, y \
         otra vez una semana después.",
        drink,
        on = date(on)
    )
}

/// What is left to do once a first sample was clean again; none before that.
pub fn once_more(result: &Result, drink: &str) -> Option<String> {
    Some(say!(
        "The sample of {clean} was clean. Until a second one, taken at the same place on {from} or later, is clean too: {drink}",
        "La muestra del {clean} salió limpia. Hasta que también salga limpia una segunda, tomada en el mismo lugar el {from} o después: {drink}",
        clean = date(result.within_on?),
        from = date(result.cleared_from()?),
        drink
    ))
}

/// Said at once of a result over a limit of health, with where the sample was taken, if that is known, and when the tank was
/// disinfected since, if it was.
pub fn over_limit(result: &Result, place: Option<&str>, disinfected: Option<NaiveDate>, drink: &str) -> String {
    let date = date(result.date);
    let taken = place.map_or_else(|| date.clone(), |place| format!("{place}, {date}"));
    if let Some(again) = once_more(result, drink) {
        return say!(
            "E.\u{a0}coli was found ({taken}). {again}",
            "Se encontró E.\u{a0}coli ({taken}). {again}",
            taken,
            again
        );
    }
    if result.of == Parameter::EColi {
        let then = disinfected.map_or_else(|| against_germs(drink), |on| after_disinfection(on, drink));
        return say!(
            "Stop drinking it now: E.\u{a0}coli was found ({taken}). {then}",
            "Deja de beberla ya: se encontró E.\u{a0}coli ({taken}). {then}",
            taken,
            then
        );
    }
    say!(
        "{what} is over the limit for health: {found} ({taken}). {then}",
        "{what} supera el límite para la salud: {found} ({taken}). {then}",
        what = parameter_name(result.of),
        found = found(result.of, result.found),
        then = next_step(result.of, Judgement::Fails, drink),
        taken
    )
}

/// What to do next.
pub fn next_step(of: Parameter, judgement: Judgement, drink: &str) -> String {
    match judgement {
        Judgement::NoLimit => return String::new(),
        Judgement::Within if of == Parameter::Lead => {
            return phrase!(
                "No amount of lead is known to be safe (WHO): if any was found, look for what gives it (flashing, solder, old \
                 brass), and let what stood in the pipes run off before you drink.",
                "No se conoce ninguna cantidad de plomo que sea segura (OMS): si se halló algo, busca de dónde sale (tapajuntas, \
                 soldadura, latón viejo) y deja correr lo que estuvo parado en las tuberías antes de beber.",
            )
            .to_owned();
        }
        Judgement::Within => {
            return phrase!(
                "Nothing has to be done about this value. Test again after work on roof, tank or filters, or when it tastes odd.",
                "Con este valor no hay que hacer nada. Repite el análisis después de trabajar en techo, tanque o filtros, o si el agua sabe \
                 raro.",
            )
            .to_owned();
        }
        Judgement::CannotTell => {
            return phrase!(
                "Ask for a test that goes down to the limit.",
                "Pide un análisis que llegue hasta el límite."
            )
            .to_owned();
        }
        Judgement::Watch | Judgement::Fails => {}
    }
    let text = match of {
        Parameter::EColi => {
            return say!("Stop drinking it now. {then}", "Deja de beberla ya. {then}", then = against_germs(drink));
        }
        Parameter::Coliforms => {
            return say!(
                "Something gets in. Until a test finds neither these nor E.\u{a0}coli: {drink} Look at lids, screens, filter \
                 housings; disinfect the pipes after the filters; test again, for both.",
                "Algo está entrando. Hasta que un análisis no halle ni estos ni E.\u{a0}coli: {drink} Revisa tapas, mallas y \
                 carcasas de filtros; desinfecta las tuberías que siguen a los filtros; repite el análisis, de ambos.",
                drink
            );
        }
        Parameter::Turbidity if judgement == Judgement::Fails => {
            return say!(
                "Lamp and chlorine don't reach germs in the dirt. {drink} Change the sediment cartridge, look for stirred-up \
                 sludge.",
                "La lámpara y el cloro no alcanzan los gérmenes dentro de la suciedad. {drink} Cambia el cartucho de \
                 sedimentos, mira si hay lodo removido.",
                drink
            );
        }
        Parameter::Turbidity => said!(
            "Change the sediment cartridge, look for stirred-up sludge; lamp and chlorine work less surely.",
            "Cambia el cartucho de sedimentos, mira si hay lodo removido; la lámpara y el cloro actúan con menos seguridad.",
        ),
        Parameter::Ph => said!(
            "Test for lead, copper and zinc after a night's standing; a calcite filter raises pH.",
            "Analiza plomo, cobre y zinc después de una noche de reposo; un filtro de calcita sube el pH.",
        ),
        Parameter::FreeChlorine if judgement == Judgement::Fails => said!(
            "Too much: drink other water and add no more. It falls by itself, in days; measure until it is under 4\u{a0}mg/L.",
            "Demasiado: bebe otra agua y no añadas más. Baja por sí solo, en días; mide hasta que dé menos de 4\u{a0}mg/L.",
        ),
        Parameter::FreeChlorine => said!(
            "Too little to act: dose again and measure after 30 minutes.",
            "Muy poco para actuar: dosifica otra vez y mide a los 30 minutos.",
        ),
        Parameter::Lead => said!(
            "Above all babies, children and the pregnant. Find the lead (flashing, solder, brass taps); a cartridge \
             certified for lead at the tap; test the first water of the morning and after a minute.",
            "Sobre todo bebés, niños y embarazadas. Encuentra el plomo (tapajuntas, soldadura, grifos de latón); un \
             cartucho certificado para plomo en el grifo; analiza la primera agua de la mañana y la de un minuto después.",
        ),
        Parameter::Copper | Parameter::Zinc | Parameter::Iron => said!(
            "Let the first water of the morning run; raise the pH; look for the metal that is eaten; test again.",
            "Deja correr la primera agua de la mañana; sube el pH; busca el metal que se corroe; repite el análisis.",
        ),
        Parameter::Manganese => said!(
            "Above all babies on the bottle, over 80\u{a0}µg/L. Take out the sludge, keep dust off; a filter made for manganese; \
             test again.",
            "Sobre todo los bebés que toman biberón, con más de 80\u{a0}µg/L. Saca el lodo, no dejes que entre polvo; un filtro \
             hecho para manganeso; repite el análisis.",
        ),
        Parameter::Aluminium => said!(
            "Bring the pH near 7; look for bare aluminium on the roof, in gutters and pots; take out the sludge; test again.",
            "Lleva el pH cerca de 7; busca aluminio desnudo en el techo, las canaletas y las ollas; saca el lodo; \
             repite el análisis.",
        ),
        Parameter::Cadmium | Parameter::Arsenic | Parameter::Chromium | Parameter::Benzopyrene => said!(
            "Find where it comes from: that roof off the tank; a certified cartridge; test again.",
            "Encuentra de dónde viene: desconecta ese techo del tanque; un cartucho certificado; repite el análisis.",
        ),
        Parameter::Asbestos => said!(
            "Don't touch the roofing. Let licensed people look at it; keep its water to the garden.",
            "No toques el techo. Que lo revise gente con licencia; deja su agua solo para el huerto.",
        ),
        Parameter::Nitrate => said!(
            "Above all babies on the bottle. Look for droppings and fertilizer dust.",
            "Sobre todo los bebés que toman biberón. Busca excrementos y polvo de fertilizante.",
        ),
        Parameter::Conductivity | Parameter::Transmittance | Parameter::Other => "",
    };
    let other = said!(
        "Drink and cook with other water; boiling makes this worse. ",
        "Bebe y cocina con otra agua; hervir empeora esta. ",
    );
    let must = judgement == Judgement::Fails && of.stays_when_boiled();
    [if must { other } else { "" }, text].concat()
}
