//! Barriers: what each is, does and leaves, and what is proven of it.

use crate::engine::checks::Figure;
use crate::engine::treatment::step::{Effect, Step, Why};
use crate::language::Phrase;
use crate::quantity::{Kind, Units, shown};
use crate::site::barrier::BarrierKind;
use crate::site::details::Detail;
use crate::words::checks::Text;

/// The name of a kind.
pub const fn name(kind: BarrierKind) -> Phrase {
    match kind {
        BarrierKind::Sediment => phrase!("Sediment cartridge", "Cartucho de sedimentos"),
        BarrierKind::Carbon => phrase!("Carbon cartridge", "Cartucho de carbón"),
        BarrierKind::Ceramic => phrase!("Ceramic candle", "Vela de cerámica"),
        BarrierKind::Membrane => phrase!("Membrane", "Membrana"),
        BarrierKind::Chlorine => phrase!("Chlorine", "Cloro"),
        BarrierKind::Ultraviolet => phrase!("Ultraviolet lamp", "Lámpara UV"),
        BarrierKind::Boiling => phrase!("Boiling", "Hervido"),
    }
}

const FILTER_SOURCE: Phrase = phrase!(
    "NSF/ANSI 53 and 58 (cysts, 99.95\u{a0}%), NSF P231 and EPA's guide standard for purifiers 1987 \
     (6, 4 and 3 log), WHO 2011: all from memory. Life: rated litres over what the tap draws.",
    "NSF/ANSI 53 y 58 (quistes, 99,95\u{a0}%), NSF P231 y la norma guía de la EPA para purificadores, 1987 \
     (6, 4 y 3 log), OMS 2011: todo de memoria. Vida útil: litros nominales entre lo que saca el grifo.",
);
const FILTER_FORMULA: Phrase = phrase!(
    "Logs as certified; days = rated litres ÷ litres a day; used up = (lost now − lost clean) ÷ \
     (changed at − lost clean).",
    "Log según el certificado; días = litros nominales ÷ litros al día; gastado = (pérdida de hoy − pérdida \
     limpio) ÷ (pérdida para el cambio − pérdida limpio).",
);
const FILTER_ASSUMES: Phrase = phrase!(
    "The certificate is for this very cartridge, in its life and flow. Read the list of what it \
     is certified for: a mark for taste proves nothing about germs.",
    "El certificado es de este mismo cartucho, dentro de su vida útil y su caudal. Lee la lista de aquello para lo \
     que está certificado: un sello por el sabor no prueba nada sobre los gérmenes.",
);

/// What is said of a kind whatever is proven of it.
pub const fn text(kind: BarrierKind) -> Text {
    let (caution, formula, source, assumes) = match kind {
        BarrierKind::Sediment => (
            phrase!(
                "Holds back dirt so that what follows can work. It does not disinfect.",
                "Retiene la suciedad para que lo que sigue pueda actuar. No desinfecta.",
            ),
            FILTER_FORMULA,
            FILTER_SOURCE,
            FILTER_ASSUMES,
        ),
        BarrierKind::Carbon => (
            phrase!(
                "Takes taste, chlorine and many organic substances. It does not disinfect: germs grow on it.",
                "Quita sabor, cloro y muchas sustancias orgánicas. No desinfecta: los gérmenes crecen en él.",
            ),
            FILTER_FORMULA,
            FILTER_SOURCE,
            FILTER_ASSUMES,
        ),
        BarrierKind::Ceramic => (
            phrase!(
                "Stops bacteria and protozoa if so certified and not cracked; not viruses, not dissolved metals.",
                "Detiene bacterias y protozoos si está certificada para ello y no tiene grietas; no detiene virus ni \
                 metales disueltos.",
            ),
            FILTER_FORMULA,
            FILTER_SOURCE,
            FILTER_ASSUMES,
        ),
        BarrierKind::Membrane => (
            phrase!(
                "What it stops depends on its pores: reverse osmosis takes most metals too, a microfilter no viruses.",
                "Lo que detiene depende de sus poros: la ósmosis inversa quita también la mayoría de los metales; un \
                 microfiltro no quita ningún virus.",
            ),
            FILTER_FORMULA,
            FILTER_SOURCE,
            FILTER_ASSUMES,
        ),
        BarrierKind::Chlorine => (
            phrase!(
                "Hardly harms Cryptosporidium and does nothing against metals. Never mix chlorine with anything: gas kills.",
                "Apenas daña a Cryptosporidium y no hace nada contra los metales. Nunca mezcles cloro con nada: el gas \
                 mata.",
            ),
            phrase!(
                "CT = free chlorine × minutes; minutes = volume ÷ flow × baffling; log = log of the table × CT ÷ CT of \
                 the table.",
                "CT = cloro libre × minutos; minutos = volumen ÷ caudal × factor de deflectores; log = log de la tabla × \
                 CT ÷ CT de la tabla.",
            ),
            phrase!(
                "EPA Disinfection Profiling and Benchmarking, 815-R-20-003 (2020): table B-2 for viruses, the regression \
                 of Smith and others (1995) for Giardia.",
                "EPA Disinfection Profiling and Benchmarking, 815-R-20-003 (2020): tabla B-2 para virus, la regresión \
                 de Smith y otros (1995) para Giardia.",
            ),
            phrase!(
                "Bacteria count as viruses do, since they need less. Protozoa count for nothing because of \
                 Cryptosporidium. The residual is measured after the contact time, and counts for a week. Clear water.",
                "Las bacterias cuentan igual que los virus, pues necesitan menos. Los protozoos no cuentan nada, por \
                 Cryptosporidium. El cloro residual se mide después del tiempo de contacto y cuenta una semana. Agua clara.",
            ),
        ),
        BarrierKind::Ultraviolet => (
            phrase!(
                "Needs clear water and power; leaves nothing in the pipe behind it; does nothing against metals. Never \
                 look into the lamp; unplug it before you open it.",
                "Necesita agua clara y electricidad; no deja ninguna protección en la tubería que sigue; no hace nada \
                 contra los metales. Nunca mires hacia la lámpara; desenchúfala antes de abrirla.",
            ),
            phrase!(
                "Dose = tested dose × tested flow ÷ flow × light in 25\u{a0}mm of this water ÷ light in the tested water; \
                 never more than tested.",
                "Dosis = dosis ensayada × caudal ensayado ÷ caudal × luz en 25\u{a0}mm de esta agua ÷ luz en el agua del \
                 ensayo; nunca más que la ensayada.",
            ),
            phrase!(
                "NSF/ANSI 55 (class A 40 mJ/cm², read; class B 16, from memory); EPA LT2 rule and UV guidance manual \
                 2006, table 1.4; Bolton and Linden 2003 (from memory).",
                "NSF/ANSI 55 (clase A 40 mJ/cm², leída; clase B 16, de memoria); regla LT2 de la EPA y su manual de UV \
                 de 2006, tabla 1.4; Bolton y Linden 2003 (de memoria).",
            ),
            phrase!(
                "Viruses are counted by the hardest, adenovirus; most others need far less. Class B is for water that is \
                 safe already and counts for nothing here. Flow limiter fitted; sleeve clean; lamp changed each year.",
                "Los virus se cuentan por el más resistente, el adenovirus; la mayoría de los demás necesita mucho \
                 menos. La clase B es para agua que ya es segura y aquí no cuenta nada. Limitador de caudal instalado; \
                 funda limpia; lámpara cambiada cada año.",
            ),
        ),
        BarrierKind::Boiling => (
            phrase!(
                "Does nothing against metals or nitrate: it concentrates them. Hot water scalds; keep children off.",
                "No hace nada contra metales ni nitrato: los concentra. El agua caliente quema; mantén lejos a los \
                 niños.",
            ),
            phrase!(
                "1 minute of rolling boil; 3 minutes above 1,524\u{a0}m (5,000\u{a0}ft).",
                "1 minuto hirviendo a borbotones; 3 minutos por encima de 1524\u{a0}m (5000\u{a0}ft).",
            ),
            phrase!(
                "EPA Emergency Disinfection of Drinking Water; CDC draws the line at 6,500\u{a0}ft (2,000\u{a0}m). Logs: WHO \
                 guidelines, 4th edition, the lower figures (from memory).",
                "EPA Emergency Disinfection of Drinking Water; los CDC ponen el límite en 6500\u{a0}ft (2000\u{a0}m). Log: guías \
                 de la OMS, 4.ª edición, las cifras más bajas (de memoria).",
            ),
            phrase!(
                "Every glass is boiled, kept covered, and drunk the same day.",
                "Cada vaso se hierve, se guarda tapado y se bebe el mismo día.",
            ),
        ),
    };
    Text { title: name(kind), formula, source, assumes, caution }
}

const WITHOUT_POWER: Phrase = phrase!(
    " Without power untreated water flows on: a valve that shuts belongs to a class A lamp.",
    " Sin electricidad el agua pasa sin tratar: una lámpara de clase A debe llevar una válvula que cierre.",
);

const BELOW_CLASS_A: Phrase = phrase!(
    " Bacteria would need less than protozoa, but are counted from the 40 of class A on only: a lamp below it is meant for \
     water that is safe already.",
    " Las bacterias necesitarían menos que los protozoos, pero solo se cuentan desde los 40 de la clase A: una lámpara por \
     debajo es para agua que ya es segura.",
);
const AGE_NOT_KNOWN: Phrase = phrase!(
    " Counted as a lamp of less than a year: write down in Upkeep when it was changed.",
    " Se cuenta como una lámpara de menos de un año: anota en Cuidados cuándo se cambió.",
);

/// Why a barrier is worth what it is worth.
fn why(step: &Step, units: &Units) -> String {
    let figure = |of: Figure| super::super::checks::figure(of, step.check.figure(of), units);
    match step.why {
        Why::NotAgainstGerms => {
            phrase!("Nothing is counted against germs.", "No se cuenta nada contra los gérmenes.").to_owned()
        }
        Why::NotProven => phrase!(
            "Nothing proves what it stops, so nothing is counted. Enter its certificate.",
            "Nada prueba lo que detiene, así que no se cuenta nada. Anota su certificado.",
        )
        .to_owned(),
        Why::Certificate if step.logs == [0.0; 3] => phrase!(
            "Its certificate names no germs: nothing is counted.",
            "Su certificado no nombra ningún germen: no se cuenta nada.",
        )
        .to_owned(),
        Why::Certificate => phrase!("Counted as certified.", "Se cuenta según su certificado.").to_owned(),
        Why::Dose if step.logs == [0.0; 3] => say!(
            "{dose} mJ/cm² reach the water: not enough to count. Class A asks for 40.",
            "Al agua le llegan {dose} mJ/cm²: no alcanza para contarlo. La clase A pide 40.",
            dose = figure(Figure::LampDose),
        ),
        Why::Dose => say!(
            "{dose} mJ/cm² reach the water at its busiest.{bacteria}{age}{power}",
            "Al agua le llegan {dose} mJ/cm² cuando más se usa.{bacteria}{age}{power}",
            dose = figure(Figure::LampDose),
            bacteria = if step.logs[0] == 0.0 { BELOW_CLASS_A.text() } else { "" },
            age = if step.check.figure(Figure::LampAge).is_nan() { AGE_NOT_KNOWN.text() } else { "" },
            power = if step.check.went_in(Detail::LampPower) == 0.0 { WITHOUT_POWER.text() } else { "" },
        ),
        Why::DoseNotKnown => phrase!(
            "Nothing is counted until its class and the flow that it is tested for are entered.",
            "No se cuenta nada hasta que anotes su clase y el caudal para el que está ensayada.",
        )
        .to_owned(),
        Why::LampWornOut => phrase!(
            "The lamp is over a year old by the diary: it shines but no longer disinfects. Nothing is counted.",
            "Según el diario, la lámpara tiene más de un año: alumbra, pero ya no desinfecta. No se cuenta nada.",
        )
        .to_owned(),
        Why::Unfiltered => phrase!(
            "Nothing is counted: dirt in unfiltered water shades germs from the light. Put a sediment cartridge before it, or write \
             down a test of the last month that finds under 1 NTU.",
            "No se cuenta nada: la suciedad del agua sin filtrar hace sombra a los gérmenes. Pon antes un cartucho de sedimentos, o \
             anota un análisis del último mes que halle menos de 1 NTU.",
        )
        .to_owned(),
        Why::TooCloudy => say!(
            "The last test found {turbidity} NTU: in water over 5 NTU nothing is counted.",
            "El último análisis halló {turbidity} NTU: en agua de más de 5 NTU no se cuenta nada.",
            turbidity = figure(Figure::Turbidity),
        ),
        Why::Contact => {
            let giardia = step.check.figure(Figure::LogGiardia);
            let giardia = if giardia.is_finite() {
                say!(
                    " Of Giardia alone {log} log.",
                    " Solo de Giardia, {log} log.",
                    log = shown::significant(giardia, 2)
                )
            } else {
                String::new()
            };
            say!(
                "{ct} mg·min/L for {wanted} that 4 log of viruses take.{giardia}",
                "{ct} mg·min/L, y 4 log de virus piden {wanted}.{giardia}",
                ct = figure(Figure::Ct),
                wanted = figure(Figure::CtForViruses),
                giardia
            )
        }
        Why::NoResidual => phrase!(
            "Nothing is counted until a residual was measured in the last 7 days and the time that it acts is known.",
            "No se cuenta nada hasta que se haya medido el cloro residual en los últimos 7 días y se sepa cuánto tiempo actúa.",
        )
        .to_owned(),
        Why::TooAlkaline => phrase!(
            "Above pH 10 no table says what chlorine does.",
            "Por encima de pH 10 ninguna tabla dice qué hace el cloro.",
        )
        .to_owned(),
        Why::Boiled => phrase!("Counted if every glass is boiled.", "Se cuenta si se hierve cada vaso.").to_owned(),
        Why::TooShort => say!(
            "At this height it must boil for {minutes} min: nothing is counted.",
            "A esta altitud debe hervir {minutes} min: no se cuenta nada.",
            minutes = figure(Figure::BoilWanted),
        ),
    }
}

/// What a barrier is worth, why, and what else it does.
pub fn sentence(step: &Step, units: &Units) -> String {
    let mut germs = Vec::new();
    for (germ, logs) in super::GERMS.into_iter().zip(step.logs) {
        if logs > 0.0 {
            germs.push(say!("{logs} log of {germ}", "{logs} log de {germ}", logs = shown::significant(logs, 2), germ));
        }
    }
    let (mut certified, mut usual) = (Vec::new(), Vec::new());
    for (what, effect) in [
        (said!("dirt", "suciedad"), step.sediment),
        (said!("metals", "metales"), step.metals),
        (said!("organic substances", "sustancias orgánicas"), step.organics),
    ] {
        match effect {
            Effect::Nothing => {}
            Effect::Usually => usual.push(what.to_owned()),
            Effect::Certified => certified.push(what.to_owned()),
        }
    }
    let mut sentences = Vec::new();
    if !germs.is_empty() {
        sentences.push(format!("{}.", crate::words::list(&germs)));
    }
    sentences.push(why(step, units));
    for (what, list) in [
        (said!("Certified against", "Con certificado contra"), certified),
        (said!("Usually helps against", "Suele ayudar contra"), usual),
    ] {
        if !list.is_empty() {
            sentences.push(format!("{what} {}.", crate::words::list(&list)));
        }
    }
    sentences.join(" ")
}

/// Days after which a cartridge is changed anyway: makers' usual advice (from memory, 80 %).
const HALF_A_YEAR: f64 = 183.0;

/// How long a filter lasts, if that is known; how far it is clogged.
pub fn life(step: &Step, units: &Units) -> Vec<String> {
    let days = step.check.figure(Figure::CartridgeLasts);
    let clogged = step.check.figure(Figure::Clogged);
    let mut sentences = Vec::new();
    if days.is_finite() {
        let lasts = shown::figure(days, Kind::Days, units);
        sentences.push(if days > HALF_A_YEAR {
            say!(
                "By its litres it lasts {lasts} at this tap; usual advice is to change it after half a year anyway.",
                "Por sus litros dura {lasts} en este grifo; el consejo usual es cambiar el filtro de todos modos al medio año.", lasts
            )
        } else {
            say!(
                "By its litres it lasts {lasts} at this tap; cloudy water clogs it sooner.",
                "Por sus litros dura {lasts} en este grifo; el agua turbia tapa el filtro antes.", lasts
            )
        });
    }
    if clogged.is_finite() {
        let share = crate::words::percent(clogged);
        sentences.push(if clogged >= 1.0 {
            say!(
                "{share} of its pressure allowance is used up: change it now.",
                "Ha gastado {share} de la pérdida de presión permitida: cambia el filtro ya.",
                share
            )
        } else {
            say!(
                "{share} of its pressure allowance is used up.",
                "Ha gastado {share} de la pérdida de presión permitida.",
                share
            )
        });
    }
    sentences
}
