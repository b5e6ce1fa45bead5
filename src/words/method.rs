//! How everything is reckoned: each formula in words and symbols, its source, and what it takes for granted. Formulas of
//! checks stand with the checks ([`super::checks::text`]).

use super::checks::Text;
use super::{garden, next};
use crate::language::Phrase;

/// The title of the page.
pub const TITLE: Phrase = phrase!("How it is reckoned", "Cómo se calcula");
/// The button that opens it.
pub const OPEN: Phrase = phrase!("All formulas and sources", "Todas las fórmulas y fuentes");
/// What stands over it.
pub const LEAD: Phrase = phrase!(
    "Every formula that this program uses, where it is from and what it takes for granted. Where a source was \
     not at hand while the formula was written down, “from memory” says so. “Common practice, no \
     source” is a rule of thumb.",
    "Cada fórmula que usa este programa, de dónde viene y qué da por supuesto. Donde no se tuvo una fuente \
     a mano al escribir la fórmula, dice «de memoria». «Práctica común, sin fuente» es una regla práctica.",
);
/// Heads of what stands under each title.
pub const HEADS: [Phrase; 3] =
    [phrase!("Formula", "Fórmula"), phrase!("Source", "Fuente"), phrase!("Takes for granted", "Da por supuesto")];
/// The words.
pub const TERMS: Phrase = phrase!("Words", "Palabras");
/// The checks of parts.
pub const CHECKS: Phrase = phrase!("Checks of parts", "Comprobaciones de las partes");
/// What makes water fit to drink.
pub const BARRIERS: Phrase = phrase!("Barriers before a tap", "Barreras antes de un grifo");

/// Where a source begins that is no other than this program.
pub const OURS: Phrase = phrase!("Ours", "Propia");

const fn topic(title: Phrase, formula: Phrase, source: Phrase, assumes: Phrase) -> Text {
    Text { title, formula, source, assumes, caution: phrase!("", "") }
}

/// From rain to tap, day by day.
pub const BALANCE: [Text; 9] = [
    topic(
        phrase!("Roof", "Techo"),
        phrase!(
            "q = A · c · max(0, P − w): runoff of a section in litres from plan area A (m²), runoff coefficient c, rain P and \
             wetting loss w (mm). A feed brings Q = κ · Σ share · q, κ the capture of gutter and screen.",
            "q = A · c · max(0, P − w): escorrentía de una sección en litros, con área en planta A (m²), \
             coeficiente de escorrentía c, lluvia P y mojado inicial w (mm). Una alimentación trae Q = κ · Σ parte \
             · q; κ es lo que captan canaleta y malla.",
        ),
        phrase!(
            "The rational method by day, any text on hydrology; 1\u{a0}mm on 1\u{a0}m² is 1\u{a0}L. κ of 90\u{a0}%: DIN 1989-1, BS 8515 (from \
             memory); wetting of 0.5\u{a0}mm: common practice, no source.",
            "El método racional por día, cualquier texto de hidrología; 1\u{a0}mm en 1\u{a0}m² es 1\u{a0}L. κ de 90\u{a0}%: DIN \
             1989-1, BS 8515 (de memoria); mojado inicial de 0,5\u{a0}mm: práctica común, sin fuente.",
        ),
        phrase!(
            "The same coefficient in light rain and in heavy. Snow counts as rain on its day. What no feed takes is told as \
             uncollected.",
            "El mismo coeficiente con lluvia ligera que con lluvia fuerte. La nieve cuenta como lluvia en su día. \
             Lo que ninguna alimentación recoge se indica como «sin recoger».",
        ),
    ),
    topic(
        phrase!("First flush", "Primeras aguas"),
        phrase!(
            "The diverter holds h of its F litres. On a rain day it keeps min(Q, F − h + drip), drip what the hole passes at \
             full head while it rains, C·o·√(2gH) for so many hours. Then √z falls at C·(o/a)·√(g/2) a second: a chamber \
             area, o hole, z depth, C = 0.62.",
            "El desviador tiene h de sus F litros. En un día de lluvia retiene min(Q, F − h + goteo); goteo es lo \
             que pasa por el orificio con toda la altura de agua mientras llueve, C·o·√(2gH) durante tantas horas. \
             Después √z baja C·(o/a)·√(g/2) por segundo: área de la cámara a, orificio o, profundidad z, C = 0,62.",
        ),
        phrase!(
            "Torricelli, any text on hydraulics; C about 0.61 to 0.62 for a small sharp-edged hole (from memory).",
            "Torricelli, cualquier texto de hidráulica; C de unos 0,61 a 0,62 para un orificio pequeño de borde \
             vivo (de memoria).",
        ),
        phrase!(
            "An upright chamber of one width, a clean hole, one storm a day. Emptied by hand it is empty on that day; a blocked \
             hole never empties it.",
            "Una cámara vertical de un solo ancho, un orificio limpio, una tormenta al día. Si se vacía a mano, ese \
             día queda vacía; un orificio tapado no la vacía nunca.",
        ),
    ),
    topic(
        phrase!("Tanks and stores", "Tanques y depósitos"),
        phrase!(
            "V(z) by the shape: cylinder and box A·z; lying cylinder and cone by their sections; a table straight between its \
             rows. Tanks joined through open valves share one surface: V = Σ V(z), solved for z by halving. The lowest rim \
             spills; what lies above it in the others is stranded; what lies below an outlet is dead storage.",
            "V(z) según la forma: cilindro y caja A·z; cilindro acostado y cono por sus secciones; una tabla, en \
             línea recta entre sus filas. Los tanques unidos por válvulas abiertas comparten una superficie: V = Σ \
             V(z), de donde sale z por bisección. Rebosa el borde más bajo; lo que queda por encima de él en los \
             demás está atrapado; lo que queda bajo una salida es volumen muerto.",
        ),
        phrase!("Geometry; communicating vessels.", "Geometría; vasos comunicantes."),
        phrase!(
            "Joined tanks level out within the day: the check of the trunk line tells how fast.",
            "Los tanques unidos se nivelan dentro del día: la comprobación de la tubería de unión dice qué tan \
             rápido.",
        ),
    ),
    topic(
        phrase!("Order within a day", "Orden dentro de un día"),
        phrase!(
            "Y = min(D, V + θQ), then V = min(V + Q − θY, S) − (1 − θ)Y: yield Y, demand D, inflow Q, content V, capacity S. \
             θ = 0 is yield after spillage, θ = 1 yield before spillage.",
            "Y = min(D, V + θQ), luego V = min(V + Q − θY, S) − (1 − θ)Y: agua usada Y, demanda D, entrada Q, \
             contenido V, capacidad S. θ = 0 es uso después del rebose; θ = 1, uso antes del rebose.",
        ),
        phrase!("Jenkins and others 1978; Fewkes & Butler 2000.", "Jenkins y otros 1978; Fewkes y Butler 2000."),
        phrase!(
            "A day is the step. After spillage is the cautious end; the truth lies between the two.",
            "El paso es un día. Después del rebose es el lado prudente; la verdad está entre los dos.",
        ),
    ),
    topic(
        phrase!("What follows what", "Qué sigue a qué"),
        phrase!(
            "Rationing looks at the stores; hauled loads that are due, orders for new ones; pumps; roofs, screens, diverters; \
             rain on gardens; each store, upstream first, its uses in their order; spill flows on to where it is plumbed; \
             leaks; evaporation from open tanks (depth × area of the water); gardens drink.",
            "El racionamiento mira los depósitos; llegan los viajes que tocan y se piden nuevos; bombas; techos, \
             mallas, desviadores; lluvia sobre los huertos; cada depósito, primero los de aguas arriba, con sus \
             usos en su orden; el rebose sigue hacia donde está conectado; fugas; evaporación de tanques abiertos \
             (profundidad × área del agua); los huertos beben.",
        ),
        phrase!(
            "Ours, so that no water is counted twice: the residual of every run is told under its figures.",
            "Propia, para que ninguna agua se cuente dos veces: el residuo de cada cálculo se indica bajo sus \
             cifras.",
        ),
        phrase!(
            "A load is ordered when a store begins a day below its trigger and comes so many days later. A pump runs from its \
             start level to its stop level.",
            "Un viaje se pide cuando un depósito empieza el día por debajo de su umbral, y llega tantos días \
             después. Una bomba funciona desde su nivel de arranque hasta su nivel de parada.",
        ),
    ),
    topic(
        phrase!("Garden by the weather", "Huerto según el tiempo"),
        phrase!(
            "Depletion D of the root zone: D + K·ET − rain − watering, 0 to TAW; TAW = 1000 · (field capacity − wilting point) · \
             root depth; watering from RAW = p · TAW on; beyond it plants drink by (TAW − D)/(TAW − RAW). Litres = mm × area ÷ \
             efficiency.",
            "Agotamiento D de la zona de raíces: D + K·ET − lluvia − riego, de 0 a TAW; TAW = 1000 · (capacidad de \
             campo − punto de marchitez) · profundidad de raíces; se riega a partir de RAW = p · TAW; más allá, \
             las plantas beben en la proporción (TAW − D)/(TAW − RAW). Litros = mm × área ÷ eficiencia.",
        ),
        phrase!(
            "FAO Irrigation and Drainage Paper 56 (1998), chapter 8, equations 82 to 85; crop and soil from its tables 12, 19 \
             and 22 (from memory).",
            "FAO Irrigation and Drainage Paper 56 (1998), capítulo 8, ecuaciones 82 a 85; cultivo y suelo, de sus \
             tablas 12, 19 y 22 (de memoria).",
        ),
        garden::HOW,
    ),
    topic(
        phrase!("Reference evapotranspiration", "Evapotranspiración de referencia"),
        phrase!(
            "ET = 0.0023 · (T mean + 17.8) · √(T max − T min) · 0.408 · Ra, Ra the radiation above the air for latitude and day.",
            "ET = 0,0023 · (T media + 17,8) · √(T máx − T mín) · 0,408 · Ra; Ra es la radiación por encima de la \
             atmósfera según la latitud y el día.",
        ),
        phrase!(
            "Hargreaves, FAO-56 equations 21 to 25 and 52. Published means may be entered instead.",
            "Hargreaves, FAO-56, ecuaciones 21 a 25 y 52. En su lugar se pueden escribir promedios publicados.",
        ),
        garden::HARGREAVES,
    ),
    topic(
        phrase!("Rationing", "Racionamiento"),
        phrase!(
            "While the store begins the day below its share, each named use asks for (1 − cut) of its amount; of several steps \
             the deepest cut holds.",
            "Mientras el depósito empieza el día por debajo de su parte, cada uso nombrado pide (1 − recorte) de su \
             cantidad; de varios pasos vale el recorte más grande.",
        ),
        phrase!("Ours.", "Propia."),
        garden::CUT_IS,
    ),
    topic(
        phrase!("Closing of the balance", "Cierre del balance"),
        phrase!(
            "Rain on roofs + hauled + rain into open tanks = wetting + not run off + uncollected + escaped + first flush + yield \
             + spill + leaks + evaporation + change in store.",
            "Lluvia en los techos + acarreada + lluvia en tanques abiertos = mojado inicial + no escurrida + sin \
             recoger + escapada + primeras aguas + agua usada + rebose + fugas + evaporación + cambio de lo \
             almacenado.",
        ),
        phrase!("Conservation of water.", "Conservación del agua."),
        phrase!(
            "A run that does not close to a billionth of what flowed is a fault of the program and says so.",
            "Un cálculo que no cierra hasta una milmillonésima de lo que fluyó es una falla del programa, y lo dice.",
        ),
    ),
];

/// The rain itself.
pub const RAIN: [Text; 5] = [
    topic(
        phrase!("Missing days", "Días sin dato"),
        phrase!(
            "A year that lacks more days than allowed is left out; other missing days take the depth of the same calendar day of \
             the nearest year that has it.",
            "Un año al que le faltan más días de los permitidos se deja fuera; los demás días sin dato toman la \
             lluvia del mismo día del calendario del año más cercano que la tenga.",
        ),
        phrase!("Ours.", "Propia."),
        phrase!(
            "A day nobody measured is never taken as dry. The answer says how many were filled.",
            "Un día que nadie midió nunca se toma como seco. La respuesta dice cuántos se completaron.",
        ),
    ),
    topic(
        phrase!("Doubts about a record", "Dudas sobre un registro"),
        phrase!(
            "Mean year outside 10 to 13,000\u{a0}mm; a day above 1,825\u{a0}mm, or above twice the wettest other one; rain on 40\u{a0}% of days with 40\u{a0}% of them under 1\u{a0}mm; a run of \
             30 zeros or more with a chance under 1 in 10,000, Π (d + ½ + i)/(w + d + 1 + i) over its days, w and d the wet and \
             dry days of those months that follow five dry ones.",
            "Año promedio fuera de 10 a 13\u{a0}000\u{a0}mm; un día de más de 1825\u{a0}mm, o de más del doble del segundo más lluvioso; lluvia en el 40\u{a0}% de los días, \
             con el 40\u{a0}% de ellos bajo 1\u{a0}mm; una serie de 30 ceros o más con probabilidad menor de 1 en \
             10\u{a0}000, Π (d + ½ + i)/(w + d + 1 + i) sobre sus días; w y d son los días con lluvia y sin ella de \
             esos meses que siguen a cinco sin lluvia.",
        ),
        phrase!(
            "Extremes as the World Meteorological Organization lists them (from memory); beta-binomial with Jeffreys' prior; the \
             limits are our own.",
            "Extremos según la lista de la Organización Meteorológica Mundial (de memoria); beta-binomial con la \
             distribución a priori de Jeffreys; los límites son nuestros.",
        ),
        phrase!("Nothing is changed by a doubt: it is told.", "Una duda no cambia nada: solo se dice."),
    ),
    topic(
        phrase!("Monthly means alone", "Solo promedios mensuales"),
        phrase!(
            "Each month's rain in equal rain days, evenly spaced: as many as are entered, else its total ÷ 8\u{a0}mm.",
            "La lluvia de cada mes en días de lluvia iguales, repartidos por igual: tantos como se escriban; si no, \
             su total ÷ 8\u{a0}mm.",
        ),
        phrase!("Common practice, no source.", "Práctica común, sin fuente."),
        super::rain::EVEN_RAIN,
    ),
    topic(
        phrase!("Generated years", "Años generados"),
        phrase!(
            "P(wet) by whether the day before was wet, month by month; depth by a gamma distribution (shape α: ln α − ψ(α) = ln \
             mean − mean ln). From means alone P(W|D) = 0.75 f, P(W|W) = 0.25 + P(W|D), scale = −2.16 + 1.83 × mean wet day. \
             Each rain year × a number with mean 1 so that 1 + CV² = (1 + CV of the chain²)(1 + CV of the number²).",
            "P(lluvia) según si llovió el día anterior, mes por mes; la cantidad, por una distribución gamma (forma \
             α: ln α − ψ(α) = ln media − media ln). Solo con promedios (W con lluvia, D sin ella): P(W|D) = 0,75 \
             f, P(W|W) = 0,25 + P(W|D), escala = −2,16 + 1,83 × día de lluvia medio. La lluvia de cada año × un \
             número de media 1 tal que 1 + CV² = (1 + CV de la cadena²)(1 + CV del número²).",
        ),
        phrase!(
            "Richardson 1981; Thom 1958; Geng, Penning de Vries & Supit 1986; a wet day from 0.254\u{a0}mm on (Richardson & Wright \
             1984, from memory). CV of 25\u{a0}% where nothing tells it: common practice, no source.",
            "Richardson 1981; Thom 1958; Geng, Penning de Vries y Supit 1986; día de lluvia desde 0,254\u{a0}mm \
             (Richardson y Wright 1984, de memoria). CV de 25\u{a0}% donde nada lo indica: práctica común, sin fuente.",
        ),
        super::generated::HOW,
    ),
    topic(
        phrase!("A drier or wetter future", "Un futuro más seco o más lluvioso"),
        phrase!("Each day's depth × the factor of its month.", "La lluvia de cada día × el factor de su mes."),
        phrase!("Ours.", "Propia."),
        phrase!(
            "The same days are wet: only how much falls changes.",
            "Llueve los mismos días: solo cambia cuánto cae.",
        ),
    ),
];

/// What the days come to.
pub const STATISTICS: [Text; 6] = [
    topic(
        phrase!("Dry days and dry stretches", "Días y rachas de escasez"),
        phrase!(
            "A dry day is one on which a use of the house, outdoor uses aside, is not met in full after rationing.",
            "Un día de escasez es aquel en que un uso de la casa, sin contar los de exterior, no se cubre por \
             completo después del racionamiento.",
        ),
        phrase!("Ours.", "Propia."),
        phrase!("A year that is left out ends a stretch.", "Un año que se deja fuera termina una racha."),
    ),
    topic(
        phrase!("Reliability", "Confiabilidad"),
        phrase!(
            "Volumetric: Σ yield ÷ Σ demand, what rationing cut counted as demand. In time: 1 − dry days ÷ days.",
            "Volumétrica: Σ agua usada ÷ Σ demanda; lo que recortó el racionamiento cuenta como demanda. En tiempo: \
             1 − días de escasez ÷ días.",
        ),
        phrase!(
            "McMahon & Mein, River and Reservoir Yield, 1986 (from memory).",
            "McMahon y Mein, River and Reservoir Yield, 1986 (de memoria).",
        ),
        phrase!("", ""),
    ),
    topic(
        phrase!("Share of good years, and how sure", "Proporción de años buenos, y qué tan segura es"),
        phrase!(
            "(p + z²/2n ± z·√(p(1 − p)/n + z²/4n²)) ÷ (1 + z²/n), p good years of n whole ones, z = 1.96.",
            "(p + z²/2n ± z·√(p(1 − p)/n + z²/4n²)) ÷ (1 + z²/n), p la proporción de años buenos entre n completos, \
             z = 1,96.",
        ),
        phrase!(
            "Wilson, Journal of the American Statistical Association 22, 1927.",
            "Wilson, Journal of the American Statistical Association 22, 1927.",
        ),
        phrase!(
            "Years are independent and the years on record a fair sample of those to come.",
            "Los años son independientes, y los del registro son una muestra fiel de los que vendrán.",
        ),
    ),
    topic(
        phrase!("Resilience and vulnerability", "Resiliencia y vulnerabilidad"),
        phrase!(
            "Resilience: dry stretches that ended ÷ dry days. Vulnerability: mean over the stretches of their worst day's \
             shortfall.",
            "Resiliencia: rachas de escasez que terminaron ÷ días de escasez. Vulnerabilidad: media, entre las \
             rachas, del faltante en su peor día.",
        ),
        phrase!(
            "Hashimoto, Stedinger & Loucks, Water Resources Research 18(1), 1982.",
            "Hashimoto, Stedinger y Loucks, Water Resources Research 18(1), 1982.",
        ),
        phrase!("", ""),
    ),
    topic(
        phrase!("Content through the year", "Contenido a lo largo del año"),
        phrase!(
            "10th, 50th and 90th percentile of the content on each day of the year, straight between neighbours.",
            "Percentiles 10, 50 y 90 del contenido en cada día del año, en línea recta entre vecinos.",
        ),
        phrase!(
            "Hyndman & Fan, The American Statistician 50, 1996, definition 7.",
            "Hyndman y Fan, The American Statistician 50, 1996, definición 7.",
        ),
        phrase!("29 February counts with the 28th.", "El 29 de febrero cuenta con el 28."),
    ),
    topic(
        phrase!("Where the water went", "Adónde fue el agua"),
        phrase!(
            "Sums of each month over the whole run ÷ years of it.",
            "Sumas de cada mes en todo el cálculo ÷ los años que abarca.",
        ),
        phrase!("The closed balance above.", "El balance cerrado de arriba."),
        phrase!("", ""),
    ),
];

/// Sizes and changes.
pub const SIZES: [Text; 5] = [
    topic(
        phrase!("Smallest that does it", "El mínimo que alcanza"),
        phrase!(
            "The whole house is run with all tanks, roofs or uses × a factor; the factor is halved in, at equal ratios, to 0.2\u{a0}%.",
            "Se calcula la casa entera con todos los tanques, techos o usos × un factor; el factor se acota por \
             mitades, en proporciones iguales, hasta el 0,2\u{a0}%.",
        ),
        phrase!(
            "Bisection; 95 of 100 and the like as chosen under “What is wanted”.",
            "Bisección; 95 de 100 y similares, según lo elegido en «Tu meta».",
        ),
        phrase!("Everything else stays as it is.", "Todo lo demás queda como está."),
    ),
    topic(
        phrase!("Never short at all", "Que nunca falte agua"),
        phrase!(
            "K = max(0, K + demand − inflow) over the record twice; the greatest K is the storage. Under yield after spillage a \
             day's use must be in store before.",
            "K = max(0, K + demanda − entrada) sobre el registro dos veces; el K más grande es el almacenamiento. \
             Con uso después del rebose, el uso de un día debe estar antes en el depósito.",
        ),
        phrase!(
            "Sequent peak: Thomas & Fiering, in Maass and others 1962, and 1963.",
            "Pico secuente: Thomas y Fiering, en Maass y otros 1962, y 1963.",
        ),
        phrase!(
            "All water in one tank, full at first. Where more is wanted than comes no storage does it, and that is said.",
            "Toda el agua en un tanque, lleno al principio. Donde se quiere más de lo que llega, ningún \
             almacenamiento alcanza, y así se dice.",
        ),
    ),
    topic(
        phrase!("By the handbooks", "Según los manuales"),
        phrase!(
            "Monthly balance: greatest deficit of twelve mean months, twice. Dry season: use × longest spell under 1\u{a0}mm. 5\u{a0}% and 6\u{a0}% \
             rules: that share of the lesser of a year's yield A·c·κ·P and use.",
            "Balance mensual: el mayor déficit de doce meses promedio, dos veces. Estación seca: uso × la racha más \
             larga de menos de 1\u{a0}mm. Reglas del 5\u{a0}% y del 6\u{a0}%: esa parte de lo menor entre el agua captada \
             en un año, A·c·κ·P, y el uso.",
        ),
        phrase!(
            "Gould & Nissen-Petersen 1999; University of Warwick, Development Technology Unit; BS 8515:2009 and BS EN \
             16941-1:2018; DIN 1989-1:2002 (the standards from memory).",
            "Gould y Nissen-Petersen 1999; University of Warwick, Development Technology Unit; BS 8515:2009 y BS EN \
             16941-1:2018; DIN 1989-1:2002 (las normas, de memoria).",
        ),
        phrase!(
            "They look at totals, never at the order of days: the table sets the daily balance beside them.",
            "Miran los totales, nunca el orden de los días: la tabla pone a su lado el balance diario.",
        ),
    ),
    topic(
        phrase!("What next", "Qué sigue"),
        phrase!(
            "Gain = lacking and hauled before − after, L a year; price ÷ gain ranks, or dry days, water, spill, or the worst year. In \
             sequence: the best, then the best after it, and so on.",
            "Ganancia = faltante y acarreada antes − después, L al año; ordena precio ÷ ganancia, o los días de \
             escasez, el agua, el rebose o el peor año. En secuencia: la mejor, luego la mejor después de ella, y \
             así.",
        ),
        phrase!("Ours; the same balance on the same rain.", "Propia; el mismo balance con la misma lluvia."),
        next::HOW,
    ),
    topic(
        phrase!("Prices", "Precios"),
        phrase!(
            "Fixed price + price of a litre × litres, or of a square metre × area.",
            "Precio fijo + precio de un litro × litros, o de un metro cuadrado × área.",
        ),
        phrase!("No source: put your own in their place.", "Sin fuente: pon los tuyos en su lugar."),
        next::PRICES,
    ),
];

/// From today on.
pub const FROM_TODAY: [Text; 4] = [
    topic(
        phrase!("The weeks ahead", "Las semanas que vienen"),
        phrase!(
            "From the last readings, run to today through the rain since; then a year under the rain of each year on record from \
             this day of the calendar on. The value below which the next outcome lies with a chance p: place p(n + 1) of the n \
             sorted ones.",
            "Desde las últimas lecturas, llevadas hasta hoy con la lluvia caída desde entonces; luego un año con la \
             lluvia de cada año del registro, desde este día del calendario. El valor bajo el cual queda el \
             próximo resultado con probabilidad p: el lugar p(n + 1) de los n ordenados.",
        ),
        phrase!(
            "Weibull 1939, definition 6 of Hyndman & Fan 1996.",
            "Weibull 1939, definición 6 de Hyndman y Fan 1996.",
        ),
        phrase!(
            "Years are as likely as each other. Nine at least for a range of eight in ten; with fewer, years are generated. Hauled \
             water is not counted on.",
            "Todos los años son igual de probables. Al menos nueve para un rango de ocho de cada diez; con menos, \
             se generan años. No se cuenta con agua acarreada.",
        ),
    ),
    topic(
        phrase!("Safe daily use", "Uso diario seguro"),
        phrase!(
            "For each future the factor on the house's uses, up to 8, with which no day to the date is dry, by halving; that which a \
             chance p of futures bears.",
            "Para cada futuro, el factor sobre los usos de la casa, hasta 8, con el que ningún día hasta la fecha \
             es de escasez, por bisección; vale el que soporta una proporción p de los futuros.",
        ),
        phrase!("Ours; ranges as above.", "Propia; rangos como arriba."),
        phrase!(
            "Every future counts alike; from tomorrow on all uses of the house are larger or smaller alike.",
            "Todos los futuros cuentan igual; desde mañana todos los usos de la casa suben o bajan por igual.",
        ),
    ),
    topic(
        phrase!("What the readings say", "Lo que dicen las lecturas"),
        phrase!(
            "Capture and use that make the levels run from each reading to the next with least squares (Gauss–Newton), weighted by \
             what is expected of reading (1\u{a0}% of the store), use (30\u{a0}% of a day's) and catch (10\u{a0}% of a day's); ranges at 90\u{a0}% by \
             Student's t.",
            "La captación y el uso que llevan los niveles de cada lectura a la siguiente con mínimos cuadrados \
             (Gauss–Newton), ponderados por lo que se espera de la lectura (1\u{a0}% del depósito), del uso (30\u{a0}% \
             del de un día) y de lo captado (10\u{a0}% de lo de un día); rangos del 90\u{a0}% con la t de Student.",
        ),
        phrase!(
            "Seber & Wild, Nonlinear Regression, 1989, ch. 2; Gelman and others, Bayesian Data Analysis, 2013, §14.2; the spreads: \
             common practice, no source.",
            "Seber y Wild, Nonlinear Regression, 1989, cap. 2; Gelman y otros, Bayesian Data Analysis, 2013, §14.2; \
             las dispersiones: práctica común, sin fuente.",
        ),
        phrase!(
            "Stretches that ended brim-full count as “at least”. Nothing is told under four stretches or with a range wider than 30\u{a0}% \
             either way.",
            "Los tramos que terminaron llenos hasta el borde cuentan como «al menos». No se dice nada con menos de \
             cuatro tramos o con un rango más ancho que el 30\u{a0}% hacia cada lado.",
        ),
    ),
    topic(
        phrase!("Alarms", "Alarmas"),
        phrase!(
            "Running sum of the evidence for three tenths less capture, or three tenths more use, than before the last half year \
             (of a shorter diary: its later half); called at 5. Which of the two by their likelihoods: one alone unless \
             twice the logarithm of how much likelier both are reaches 6.6 (χ², 99\u{a0}%).",
            "Suma acumulada de la evidencia de tres décimas menos de captación, o tres décimas más de uso, que \
             antes del último medio año (en un diario más corto, de su segunda mitad); avisa al llegar a 5. Cuál de las \
             dos, por sus verosimilitudes: una sola, salvo que el doble del logaritmo de cuánto más verosímiles son \
             ambas llegue a 6,6 (χ², 99\u{a0}%).",
        ),
        phrase!(
            "Page, Biometrika 41, 1954; Lorden, Annals of Mathematical Statistics 42, 1971; Wilks, the same 9, 1938.",
            "Page, Biometrika 41, 1954; Lorden, Annals of Mathematical Statistics 42, 1971; Wilks, la misma 9, 1938.",
        ),
        phrase!(
            "Eight stretches at least before them make a normal.",
            "Al menos ocho tramos anteriores fijan lo normal.",
        ),
    ),
];

/// What was in the water.
pub const TESTS: [Text; 1] = [topic(
    phrase!("Limits of water tests", "Límites de los análisis de agua"),
    phrase!(
        "What was found against the lower of the limits named with each test.",
        "Lo encontrado frente al más bajo de los límites que se nombran en cada análisis.",
    ),
    super::treatment::results::ABOUT,
    phrase!("A sample tells of one day and one tap.", "Una muestra habla de un día y de un grifo."),
)];

/// The sections before those of the checks, with what stands in each.
pub const SECTIONS: [(Phrase, &[Text]); 6] = [
    (phrase!("From rain to tap", "De la lluvia al grifo"), &BALANCE),
    (phrase!("Rain", "Lluvia"), &RAIN),
    (phrase!("What the days come to", "En qué resultan los días"), &STATISTICS),
    (phrase!("How big, what next", "Qué tamaño, qué sigue"), &SIZES),
    (phrase!("From today", "Desde hoy"), &FROM_TODAY),
    (phrase!("Water tests", "Análisis de agua"), &TESTS),
];
