# Cada frase de una lección en español. Un mensaje, una frase; quien lee puede tener doce años.

## Enlaces

list-comma = { $head }, { $next }
list-and = { $head } y { $last }
span = { $first } a { $last }
span-dash = { $first }–{ $last }

## Nombres de las cosas

band-name = gomita ({ $colour }, { $letter })
band-plain = gomita ({ $letter })
band-short = { $colour }, { $letter }
bands-of = { $n ->
    [one] 1 gomita ({ $colour }, { $letter })
   *[other] { $n } gomitas ({ $colour }, { $letter })
}
bands-plain = { $n ->
    [one] 1 gomita ({ $letter })
   *[other] { $n } gomitas ({ $letter })
}
loop-lowest = el lazo más bajo ({ $band })
loop-top = el lazo más alto ({ $band })
loop-only = el lazo ({ $band })
loop-counted = el lazo { $n } desde abajo ({ $band })
loops-lowest = los { $n } lazos más bajos
loops-top = los { $n } lazos más altos
loops-counted = los lazos { $first } a { $last } desde abajo
peg-one = la clavija { $peg }
peg-many = las clavijas { $pegs }
end-name = el extremo libre «{ $end }»
end-plain = el extremo libre
end-start = la primera gomita (la que cuelga bajo el telar)

way-far = hacia delante
way-near = hacia ti
way-left = hacia tu izquierda
way-right = hacia tu derecha
way-far-left = hacia delante y hacia tu izquierda
way-far-right = hacia delante y hacia tu derecha
way-near-left = hacia ti y hacia tu izquierda
way-near-right = hacia ti y hacia tu derecha
way-clause = , { $way }
side-far = hacia delante, lejos de ti
side-near = hacia ti
side-left = hacia tu izquierda
side-right = hacia tu derecha

length-mm = { $n } mm
length-in = { $n } pulgadas

times = { $n ->
    [one] una vez
    [2] dos veces
   *[other] { $n } veces
}

## Títulos y rótulos

byline = Una pieza de { $designer }
byline-none = Una pieza para el telar de clavijas
edition-right = Edición para diestros: sujeta el gancho con la mano derecha.
edition-left = Edición para zurdos: sujeta el gancho con la mano izquierda. Toda la pieza está en espejo, no solo sus dibujos.
heading-level = Nivel
heading-supplies = Necesitas
heading-supplies-many = Necesitas, para { $n ->
    [one] 1 pieza
   *[other] { $n } piezas
}
heading-tools = Herramientas
heading-key = Qué gomita es cuál
heading-hold = ¿Aguanta?
heading-cautions = Con cuidado
heading-check = Para y mira
heading-chart = Lo que hay ahora en cada clavija, el lazo más bajo primero (×2: dos iguales)
heading-notes = De quien la diseñó
heading-glossary = Palabras de esta lección
glossary-line = { $term }: { $means }
heading-finished = La pieza acabada
finished-size = Fuera del telar y en reposo mide { $length } de largo, { $width } de ancho y { $height } de grueso.
finished-size-high = Fuera del telar y en reposo mide { $length } de largo, { $width } de ancho y { $height } de alto.
finished-wrists = Cerrada, se puede llevar en muñecas de { $low } a { $high }.
finished-no-wrist = Tal como está, no le queda bien a ninguna muñeca.
finished-unasked = Su imagen y su tamaño solo se calculan para la lección completa.
finished-nothing = Faltan aquí su imagen y su tamaño: todavía no hay ninguna gomita.
finished-restless = Faltan aquí su imagen y su tamaño: el cálculo no llegó a terminar.
shown-true = Tamaño real.
shown-twice = El doble del tamaño real.
shown-larger = Más grande que el tamaño real.
shown-smaller = Más pequeña que el tamaño real.
picture-finished = { $title }: la pieza acabada, vista frontal. Gomitas: { $colours }.
picture-front = { $title } en reposo, { $length } mm de largo y { $width } mm de ancho, vista frontal; { $key }
picture-back = { $title } en reposo, { $length } mm de largo y { $width } mm de ancho, vista posterior; { $key }
picture-side = { $title } en reposo, { $length } mm de largo y { $width } mm de ancho, vista lateral con el frente arriba; { $key }
picture-worn = { $title } en una muñeca de { $girth } mm; { $key }
heading-extension = A tu medida
extension-now = { $bands ->
    [0] Tal como se muestra aquí, no tiene cadena de extensión.
    [one] Tal como se muestra aquí, tiene una cadena de extensión de 1 gomita.
   *[other] Tal como se muestra aquí, tiene una cadena de extensión de { $bands } gomitas.
}
extension-line = Para una muñeca de { $wrist }: { $bands ->
    [0] sin cadena de extensión.
    [one] una cadena de extensión de 1 gomita.
   *[other] una cadena de extensión de { $bands } gomitas.
}
repeats-now = Tal como se muestra aquí, la repetición se hace { $times } veces en total. { $bands ->
    [one] Cada vez lleva 1 gomita.
   *[other] Cada vez lleva { $bands } gomitas.
}
repeats-line = Para una muñeca de { $wrist }: { $times ->
    [one] 1 vez
   *[other] { $times } veces
} en total.
sizes-line = Para una muñeca de { $wrist }: haz la repetición { $times ->
    [one] 1 vez
   *[other] { $times } veces
} en total, { $bands ->
    [0] sin alargar.
    [one] con 1 gomita para alargar.
   *[other] con { $bands } gomitas para alargar.
}
sizes-count = { $n } de { $letter }
sizes-bands = Hacen falta { $list }, { $n ->
    [one] 1 gomita
   *[other] { $n } gomitas
} en total.
sizes-pegs = Con otro número de repeticiones la pieza acaba en otra clavija. Donde un paso nombra la clavija { $peg }, toma la última clavija de la tabla y cuenta desde ella las que están al lado.
sizes-best = «Muñeca» dice dónde queda mejor; «Posible en», dónde se puede llevar.
sizes-wrists = La tabla sirve para muñecas de { $wrists }: desde un niño de unos siete años hasta un adulto corpulento.
sizes-no-shorter = Para muñecas más pequeñas que las de la tabla, la pieza no se puede hacer tan corta.
sizes-no-longer = Para muñecas más grandes que las de la tabla, la pieza no se puede hacer tan larga.
sizes-step = Paso { $step }: { $times ->
    [one] una vez más
   *[other] { $times } veces más
}.
sizes-last-peg = La clavija { $peg } ocupa el lugar de la clavija { $own }.
sizes-extend = La extensión viene después del paso { $step }: toma con el gancho una gomita nueva y pásala por los dos extremos de la última; deja en el gancho los dos extremos de la nueva. Hazlo una vez por cada gomita de la extensión y luego cierra la pieza.
column-possible = Posible en
column-last-peg = Última clavija
column-times-step = Paso { $step }, veces más
heading-sizes = Gomitas para cada muñeca
column-wrist = Muñeca
column-times = Repeticiones
column-extension = Extensión
label-page = Página { $page } de { $pages }
label-ruler = Comprueba la impresión: esta barra mide 50 mm; la de abajo, 2 pulgadas.
label-ruler-metric = 50 mm
label-ruler-inch = 2 pulgadas
label-note = Nota
label-warning = Ten cuidado
label-hook = Gancho
label-closeup = La clavija de lado
label-held-band = Colocar una gomita
label-held-hook = Sujetar el gancho
label-closure-clip = El cierre y sus lazos
label-closure-cord = El cordón y sus lazos
label-order = En este orden
label-after = Así queda después
label-tick = Marca cada una

## Nivel

level-basic = Básico
level-easy = Fácil
level-intermediate = Medio
level-complex = Difícil
age-from = Desde unos { $n } años, con una persona adulta cerca.
time-by-hand = La primera vez lleva más o menos { $hours ->
    [0] { $minutes } minutos
    [one] { $minutes ->
        [0] una hora
       *[other] una hora y { $minutes } minutos
    }
   *[other] { $minutes ->
        [0] { $hours } horas
       *[other] { $hours } horas y { $minutes } minutos
    }
}.
band-size = Gomitas: { $bore } de ancho por dentro, planas sobre la mesa, y { $thick } de grosor, de { $material }.
band-size-named = Gomitas «{ $kind }»: { $bore } de ancho por dentro, planas sobre la mesa, y { $thick } de grosor, de { $material }.
material-silicone = silicona
material-rubber = caucho natural
material-tpe = plástico (TPE)
letters-are = La letra que sigue a un color es su nombre corto: está en los dibujos y junto a cada número.
safe-small = Es fácil atragantarse con las gomitas y los cierres: mantenlos lejos de los niños menores de 3 años.
safe-tight = Nunca pongas una gomita apretada en un dedo, en el cuello ni en la muñeca de un bebé.
safe-eyes = No apuntes a los ojos con una gomita estirada.
safe-rules = Las normas locales van primero.
safe-more = Todos los cuidados están en la última página.
tool-joined-beside = Junta los { $n } telares lado a lado, con las clavijas a la misma altura y { $gap } entre las filas que se tocan.
tool-joined-beyond = Junta los { $n } telares uno tras otro, con { $gap } entre las clavijas que se tocan.
tool-hook-size = lo bastante fino para entrar en el lado abierto de las clavijas (de { $low } a { $high } de grosor), con la punta roma
tool-cord-length = de unos { $length } de largo y no más grueso que una gomita, con una aguja roma para pasarlo
reason-colours = { $n ->
    [one] Gomitas de un solo color.
   *[other] Gomitas de { $n } colores.
}
reason-repeat = Series cortas de movimientos que se repiten.
reason-stack = { $n ->
    [one] Nunca más de un lazo en una clavija.
   *[other] Hasta { $n } lazos en una clavija.
}
reason-wide = Algunas gomitas rodean tres clavijas o más.
reason-twist = A algunas gomitas se les da media torsión.
reason-cap = Se enrollan remates en una sola clavija.
reason-hook = Con el gancho se pasan lazos por dentro de otros.
reason-lift = Se levantan lazos por encima de otros.
reason-hang = Se cuelgan gomitas del gancho y se deslizan.
reason-count = { $n ->
    [one] Una gomita en total.
   *[other] { $n } gomitas en total.
}

## Material

column-band = Gomita
column-for = Para
column-count = Cuántas
column-weight = Peso
total = Todas las gomitas
purpose-placed = { $n } para colocar
purpose-caps = { $n ->
    [one] 1 remate
   *[other] { $n } remates
}
purpose-hung = { $n } para colgar
purpose-finishing = { $n } para acabar
purpose-extension = { $n } para alargar
purpose-spares = { $n ->
    [one] 1 de reserva
   *[other] { $n } de reserva
}
weight = { $grams } g
weight-about = unos { $grams } g
thing-clips = { $n ->
    [one] 1 cierre
   *[other] { $n } cierres
}
thing-clips-spare = { $n ->
    [one] 1 cierre
   *[other] { $n } cierres
} y { $spare ->
    [one] 1 de reserva
   *[other] { $spare } de reserva
}
tool-straight = { $n ->
    [one] un telar
   *[other] { $n } telares
} con { $rows ->
    [one] una fila
   *[other] { $rows } filas
} de { $pegs ->
    [one] 1 clavija
   *[other] { $pegs } clavijas, a { $pitch } una de otra
}
tool-round = { $n ->
    [one] un telar redondo
   *[other] { $n } telares redondos
} con { $rows ->
    [one] un anillo
   *[other] { $rows } anillos
} de { $pegs ->
    [one] 1 clavija
   *[other] { $pegs } clavijas, a { $pitch } una de otra
}
tool-pegs = { $n ->
    [one] una tabla
   *[other] { $n } tablas
} con { $pegs ->
    [one] 1 clavija
   *[other] { $pegs } clavijas
}
tool-cord = { $n ->
    [one] un trozo de cordón para atar
   *[other] { $n } trozos de cordón para atar
}
tool-hooks = { $n ->
    [one] un gancho
   *[other] { $n } ganchos
}
tool-scissors = { $n ->
    [one] unas tijeras para recortar el nudo
   *[other] { $n } tijeras para recortar los nudos
}

## Partes

phase-prepare = Prepárate
phase-place = Coloca las gomitas
phase-turn = Gira el telar
phase-work = Trabaja los lazos
phase-finish = Acaba
phase-extend = Alarga
phase-close = Cierra
phase-wear = Llévala sin peligro
phase-use = Úsala sin peligro

intro-place = Cada gomita nueva va encima de las que ya están. Bájala un poco antes de tomar la siguiente. Sujétala en su primera clavija con un dedo de una mano y estírala con la otra.
intro-work = El dibujo pequeño muestra la clavija de lado: qué lazo tomas y qué lazos están encima. Toma el gancho como un lápiz; un dedo de la otra mano sujeta abajo las gomitas de la clavija.
intro-work-film = Mira la clavija de lado: se ve qué lazo tomar y qué lazos quedan encima. Toma el gancho como un lápiz; un dedo de la otra mano sujeta abajo las gomitas de la clavija.
intro-finish = No sueltes los lazos hasta que estén sujetos.

## Pasos

step-prepare = Pon el telar delante de ti, de modo que la clavija { $near } sea la más cercana a ti.
step-prepare-bands = Prepara { $bands } y cuéntalas.
detail-rows = Las filas se llaman { $letters } desde tu izquierda. Las clavijas se cuentan hacia delante.
detail-row-one = Hay una fila, { $letter }. Sus clavijas se cuentan hacia delante.
detail-round = Las clavijas se cuentan alrededor. Empieza por la más cercana a ti y ve hacia tu derecha.
legend-channel = En los dibujos, un punto marca el lado abierto de cada clavija.
detail-channel = El lado abierto de cada clavija mira { $side }.
detail-channel-out = El lado abierto de cada clavija mira hacia fuera.
detail-channel-in = El lado abierto de cada clavija mira hacia dentro.
detail-channel-any = Cada clavija tiene un lado abierto. Búscalo: por ahí entra el gancho.

step-place-two = Estira una { $band } de la clavija { $first } a la clavija { $last }{ $way }.
step-place-many = Estira una { $band } alrededor de las clavijas { $pegs }.
detail-twist = Entre { $first } y { $last } dale a la gomita { $n ->
    [one] media torsión, para que forme un 8
   *[other] { $n } medias torsiones
}.
detail-twist-back = Entre { $first } y { $last } dale a la gomita { $n ->
    [one] media torsión en el otro sentido
   *[other] { $n } medias torsiones en el otro sentido
}: vista desde { $first }, la hebra de la derecha cruza por encima de la otra.
detail-turns = Enróllala { $times } en la clavija { $peg }.
step-wind = Enrolla una { $band } { $times } en la clavija { $peg }, encima de todo lo que hay. Es el remate: sujeta los lazos de debajo.
step-turn = Gira todo el telar, de punta a punta, hasta que la clavija { $near } sea la más cercana a ti.
detail-turned = Lo que estaba a tu izquierda está ahora a tu derecha. Las clavijas no cambian de nombre.
step-hook = Mete el gancho por el lado abierto de la clavija { $source }, por dentro { $above ->
    [all] de todos los lazos de encima
    [any] de todos los lazos de encima (si los hay)
    [one] del lazo de encima
   *[other] de los { $above } lazos de encima
}. Toma { $loop } y { $taken ->
    [one] súbelo
   *[other] súbelos
} a través de { $above ->
    [one] ese lazo
   *[other] esos lazos
}. { $taken ->
    [one] Ponlo
   *[other] Ponlos
} en la clavija { $target }{ $way }.
step-hook-top = Toma con el gancho { $loop } de la clavija { $source }. { $taken ->
    [one] Ponlo
   *[other] Ponlos
} en la clavija { $target }{ $way }.
detail-skipped = Pasa solo por { $through ->
    [one] el lazo más alto
   *[other] los { $through } lazos más altos
}. Deja en su sitio { $n ->
    [one] el lazo que está
   *[other] los { $n } lazos que están
} justo encima del que tomas.
detail-skipped-all = No pases por { $n ->
    [one] el lazo
   *[other] los { $n } lazos
} de encima: sácalo por un lado.
step-slide = Mete el gancho por el lado abierto de la clavija { $source } y toma { $loop }. Desliza del gancho a { $taken ->
    [one] ese lazo
   *[other] esos lazos
}: { $hung }. Después pon { $taken ->
    [one] el lazo
   *[other] los lazos
} en la clavija { $target }{ $way }.
step-slide-through = Mete el gancho por el lado abierto de la clavija { $source }, por dentro { $above ->
    [all] de todos los lazos de encima
    [any] de todos los lazos de encima (si los hay)
    [one] del lazo de encima
   *[other] de los { $above } lazos de encima
}, y toma { $loop }. Desliza del gancho a { $taken ->
    [one] ese lazo
   *[other] esos lazos
}: { $hung }. { $taken ->
    [one] Súbelo
   *[other] Súbelos
} a través { $above ->
    [all] de todos los lazos de encima
    [any] de todos los lazos de encima (si los hay)
    [one] del lazo de encima
   *[other] de los { $above } lazos de encima
} y { $taken ->
    [one] ponlo
   *[other] ponlos
} en la clavija { $target }{ $way }.
step-lift = En la clavija { $peg }, toma con el gancho { $loop }. { $taken ->
    [one] Pásalo
   *[other] Pásalos
} por encima { $above ->
    [all] de todos los lazos de encima
    [any] de todos los lazos de encima (si los hay)
    [one] del lazo de encima
   *[other] de los { $above } lazos de encima
} y { $taken ->
    [one] deja que caiga
   *[other] deja que caigan
} de la clavija.
step-lift-on = En la clavija { $peg }, toma con el gancho { $loop }. { $taken ->
    [one] Pásalo
   *[other] Pásalos
} por encima { $above ->
    [all] de todos los lazos de encima
    [any] de todos los lazos de encima (si los hay)
    [one] del lazo de encima
   *[other] de los { $above } lazos de encima
} y por encima de la clavija, y { $taken ->
    [one] ponlo
   *[other] ponlos
} en la clavija { $target }{ $way }.
step-transfer = Quita { $loop } de la clavija { $source } y { $taken ->
    [one] ponlo
   *[other] ponlos
} en la clavija { $target }{ $way }. No { $taken ->
    [one] le
   *[other] les
} des la vuelta.
step-hang = Enrolla una { $band } { $times } en la varilla del gancho. Déjala colgada ahí.
step-bind = Mete el gancho por { $n ->
    [one] el lazo
    [2] los dos lazos
   *[other] los { $n } lazos
} de la clavija { $peg }. Toma { $count ->
    [one] una { $band } y tira de ella hasta que pase la mitad. Deja sus dos extremos
   *[other] { $bands }, una junto a otra, y tira de ellas hasta que pase la mitad de cada una. Deja todos sus extremos
} en el gancho y saca los lazos de la clavija.
step-bind-some = Mete el gancho solo por { $n ->
    [one] el lazo de arriba
   *[other] los { $n } lazos de arriba
} de la clavija { $peg }. Toma { $count ->
    [one] una { $band } y tira de ella hasta que pase la mitad. Deja sus dos extremos
   *[other] { $bands }, una junto a otra, y tira de ellas hasta que pase la mitad de cada una. Deja todos sus extremos
} en el gancho y saca { $n ->
    [one] ese lazo
   *[other] esos lazos
} de la clavija. Los demás se quedan.
step-put = Desliza { $n ->
    [one] el lazo
    [2] los dos lazos
   *[other] los { $n } lazos
} del extremo libre por la punta del gancho hasta la clavija { $peg }.
step-put-apart = Quita del gancho los lazos del extremo libre y pon { $n ->
    [one] uno
   *[other] { $n }
} en cada una de las clavijas { $pegs }, en este orden y planos, como están.
step-extend = Añade una cadena de { $bands }: pasa cada gomita nueva por los dos extremos de la anterior.
detail-extend-together = Toma { $n } gomitas cada vez, una junto a otra como si fueran una sola, y pásalas por todos los extremos anteriores.
step-knot = Pasa un cordón por { $n ->
    [one] el lazo
    [2] los dos lazos
   *[other] los { $n } lazos
} ({ $where }) y átalo. Aprieta el nudo.
step-clip = Engancha un cierre en { $n ->
    [one] el lazo
    [2] los dos lazos
   *[other] los { $n } lazos
} ({ $where }).
step-clip-join = Junta los lazos de { $where } y engancha un cierre en los { $n }.
step-clip-join-off = Junta los lazos de { $ends } con los que antes estaban aquí: { $pegs }. Engancha un cierre en los { $n }.
detail-catch = Toma solo { $n ->
    [one] el lazo más alto
   *[other] los { $n } lazos más altos
}.
detail-off = Después saca los lazos.
step-release = Saca la pieza del telar, de una punta a la otra, lazo a lazo. No la arranques.
detail-rough = Al principio se ve torcida. Estírala con suavidad a lo largo, unas cuantas veces, y se coloca.
detail-keep = Guarda { $n ->
    [one] en un dedo el lazo
   *[other] juntos en un dedo los { $n } lazos
} de { $pegs }. { $n ->
    [one] Lo
   *[other] Los
} necesitas para cerrar la pieza.

step-again = Repite { $steps }: { $times ->
    [one] una vez más
   *[other] { $times } veces más
}. { $shift } La última vez terminas aquí: { $end }.
step-again-same = Repite { $steps } en el mismo sitio: { $times ->
    [one] una vez más
   *[other] { $times } veces más
}.
step-again-counted = Repite { $steps }: { $times ->
    [one] una vez más
   *[other] { $times } veces más
}, cada vez en otras clavijas.
steps-one = el paso { $first }
steps-two = los pasos { $first } y { $last }
steps-many = los pasos { $first } a { $last }
shift-pegs = { $n ->
    [one] Avanza cada vez una clavija más { $way }.
   *[other] Avanza cada vez { $n } clavijas más { $way }.
}
shift-rows = { $n ->
    [one] Avanza cada vez una fila más { $way }.
   *[other] Avanza cada vez { $n } filas más { $way }.
}
shift-round = { $n ->
    [one] Avanza cada vez una clavija, { $turn }.
   *[other] Avanza cada vez { $n } clavijas, { $turn }.
}
turn-anticlockwise = en sentido antihorario
turn-clockwise = en sentido horario
shift-both = Avanza cada vez a lo largo y a lo ancho.
detail-list-short = La lista solo llega hasta la vuelta { $last }. Sigue igual.
detail-left-out = Las partes { $first } a { $last } son como las anteriores y aquí no se muestran.
detail-colours = Los colores cambian de una vuelta a otra.
detail-above = { $n ->
    [0] Desde la vuelta 2 no hay ningún lazo encima ({ $steps }).
    [one] Desde la vuelta 2 hay 1 lazo encima ({ $steps }).
   *[other] Desde la vuelta 2 hay { $n } lazos encima ({ $steps }).
}
detail-above-changes = En el paso { $step } cambia de una vuelta a otra el número de lazos de encima. Pasa siempre por dentro de todos.
detail-over-changes = En el paso { $step } cambia de una vuelta a otra el número de lazos de encima. Pasa siempre por encima de todos.
tick-round = Vuelta { $n }
tick-span = { $first } a { $last }
tick-span-words = { $first }, y así hasta { $last }
tick-way = de { $first } a { $last }
tick-colour = { $colour } ({ $letter })
tick-all = todas las gomitas: { $colour }
tick-steps = { $colour } ({ $steps })
tick-order = colores por orden: { $letters }

## Comprobaciones

check-bands = { $n ->
    [one] Hasta aquí se ha usado 1 gomita.
   *[other] Hasta aquí se han usado { $n } gomitas.
}
check-loops = { $pegs }: { $n ->
    [0] ningún lazo
    [one] 1 lazo
   *[other] { $n } lazos
}{ $many ->
    [one] {""}
   *[other] {" "}cada una
}.
check-clip = { $n ->
    [one] El cierre pasa por 1 lazo.
   *[other] El cierre pasa por { $n } lazos. Cuéntalos.
}
check-cord = { $n ->
    [one] El cordón pasa por 1 lazo.
   *[other] El cordón pasa por { $n } lazos. Cuéntalos.
}
check-bare = No queda ningún lazo en el telar.
check-left = Todas las demás clavijas están vacías.
check-cure-place = Si una clavija tiene menos lazos, una gomita no llegó a ella. Quita las gomitas hasta ese punto y sigue desde ahí.
check-cure-work = Si una clavija tiene más o menos lazos, uno se quedó atrás o vino de otro sitio. Vuelve atrás por los pasos y búscalo antes de sujetar nada.

## Llevarla

wear-fit = En la muñeca, un dedo tiene que pasar por debajo con facilidad. Si no pasa, la pieza aprieta: hazla más larga.
use-safe = Esta pieza no es para la muñeca: no la pases nunca por la mano, por un dedo ni por el cuello. No la dejes cerca del calor, de niños pequeños ni de mascotas. Tírala cuando las gomitas se pongan pegajosas o se agrieten.

## Si aguanta

hold-yes = { $n ->
    [one] Sí. Está probado que la única gomita queda sujeta cuando la pieza se acaba como se muestra.
   *[other] Sí. Está probado que las { $n } gomitas quedan sujetas cuando la pieza se acaba como se muestra.
}
hold-no = { $n ->
    [one] No. Una gomita no queda sujeta y se cae:
   *[other] No. { $n } gomitas no quedan sujetas y se caen:
} { $which }.
hold-unproved = { $n ->
    [one] Sin probar para una gomita:
   *[other] Sin probar para { $n } gomitas:
} { $which }.
hold-left-out = { $n ->
    [one] Esta hoja no muestra el patrón entero: por un error en él falta un paso. Corrígelo primero.
   *[other] Esta hoja no muestra el patrón entero: por { $n } errores en él faltan pasos. Corrígelos primero.
}
hold-not-shown = No está probado que todas las gomitas queden sujetas.
hold-band = gomita { $number } ({ $band }, paso { $step })
hold-more = { $n } más
hold-snap-none = Si se rompe una gomita, no se cae ninguna otra.
hold-snap-worst = { $n ->
    [one] Si se rompe una gomita, puede caerse 1 más.
   *[other] Si se rompe una gomita, pueden caerse hasta { $n } más.
}
hold-snap-harmless = { $n ->
    [one] 1 gomita puede romperse sin soltar otra.
   *[other] { $n } gomitas pueden romperse sin soltar otra.
}

## Cuidados. Los de siempre; las normas del lugar van primero.

caution-small = Es fácil atragantarse con gomitas y cierres pequeños. No los dejes cerca de niños de menos de 3 años ni de quien aún se lleva cosas a la boca.
caution-tight = Nunca pongas una gomita apretada en un dedo, en el cuello o en la muñeca de un bebé. Si la piel se pone pálida, azul, hinchada o dormida, quítala enseguida: córtala. Pide ayuda si la piel no mejora en unos minutos.
caution-sleep = Quítate las pulseras para dormir. Un dedo tiene que pasar por debajo con facilidad. Si deja marcas rojas, es demasiado pequeña.
caution-eyes = Apunta las gomitas estiradas hacia abajo, lejos de las caras. Ponte gafas cuando tires fuerte. Una gomita que se rompe o salta puede dañar un ojo.
caution-pets = Recoge las gomitas que se caigan. Las mascotas se las tragan.
caution-latex = Algunas gomitas son de caucho natural. Si alguien tiene alergia al látex, usa gomitas declaradas sin látex y no te fíes del aspecto ni del tacto.
caution-old = Tira las gomitas pegajosas, agrietadas o descoloridas. Se rompen.
caution-rules = Compra gomitas declaradas conformes con las normas de juguetes de donde vives; esta lección no puede comprobarlo. Las normas locales y las de tu escuela o biblioteca van primero.

## Pie

colophon-version = Lección hecha con Pegwright { $version } de un patrón de formato { $format }.
colophon-print = Marca de impresión { $mark }: dos hojas con la misma marca enseñan lo mismo.
colophon-errata = ¿Hay un error? Díselo a { $designer } y da la marca de impresión.
colophon-errata-none = ¿Hay un error? Díselo a quien te dio esta hoja y da la marca de impresión.
colophon-licence = Licencia: { $licence }

## Los dibujos en palabras

picture-loom = El telar vacío
picture-loom-text = El telar vacío como está delante de ti: { $pegs }.
picture-part = Parte { $n } de { $count }
picture-step = Paso { $n }
picture-view = Clavijas del dibujo: { $pegs }.
picture-place = La nueva { $band } está dibujada con trazo grueso. Rodea { $pegs }.
picture-wind = El remate, una { $band }, está enrollado en la clavija { $peg }.
picture-hook = Una flecha va de la clavija { $source } a la clavija { $target }. El lazo que se movió está dibujado con trazo grueso donde queda ahora.
picture-lift = Una flecha curva sube y sale de la clavija { $peg }.
picture-lift-on = Una flecha curva sube de la clavija { $source } y va a la clavija { $target }.
picture-turn = Dos flechas curvas muestran cómo se gira el telar.
picture-fasten = El cierre está dibujado ({ $where }).
picture-hang = Del gancho cuelga una { $band }.
picture-put = Los lazos del extremo libre están dibujados con trazo grueso en { $where }.
picture-extend = La cadena nueva está dibujada con trazo grueso en el extremo libre.
picture-again-place = Las gomitas de todas las vueltas, con su orden en números.
picture-again-still = El telar después de la última vuelta.
picture-again-work = Flechas con números muestran el orden de todas las vueltas.
picture-closeup = La clavija { $peg } de lado, de abajo arriba: { $loops }.
picture-closeup-hook = La varilla del gancho de lado: { $loops }.
picture-taken = Contando desde abajo, toma el lazo { $loops }.
picture-new = Contando desde abajo, es nuevo el lazo { $loops }.
picture-chart = Cada clavija con sus lazos, el más bajo primero: { $pegs }.
chart-peg = { $peg }: { $loops }
chart-run = { $n } de { $letter }
picture-held-band = Desde arriba: un dedo de una mano sujeta la gomita en su primera clavija; el pulgar y otro dedo de la otra mano la estiran sobre la siguiente.
picture-held-hook = De lado: una mano toma el gancho como un lápiz, con la punta en el lado abierto de la clavija; un dedo de la otra mano sujeta abajo los lazos.
picture-closure-clip = El cierre visto de cerca. Pasa por { $n ->
    [one] 1 lazo
   *[other] { $n } lazos
}: { $loops }.
picture-closure-cord = El cordón visto de cerca. Pasa por { $n ->
    [one] 1 lazo
   *[other] { $n } lazos
}: { $loops }.
picture-bind = La última gomita está dibujada con trazo grueso, a través de los lazos de la clavija { $peg }.

## Vídeo

shot-piece = La pieza acabada
view-piece = Toda la pieza acabada, en reposo, desde arriba.
view-cautions = La cara de quien enseña, o los cuidados para leer.
view-bench = El telar y las gomitas preparados, desde arriba.
view-heaps = Los montones de gomitas, cada uno junto a su letra.
view-loom = Todo el telar vacío, desde arriba.
view-turn = Todo el telar desde arriba, con sitio en los dos extremos para girarlo.
view-standing = El telar desde arriba, tal como va el trabajo.
view-pegs = Desde arriba: { $where }.
view-side = De cerca y de lado: los lazos de la clavija { $peg } y la punta del gancho.
view-shaft = La varilla del gancho.
view-release = Todo el telar desde arriba y las dos manos.
view-wear = La pieza en la muñeca, con un dedo debajo.
view-check-pegs = Desde arriba, enfocado y sin manos: { $pegs }.
view-check = Todo el telar desde arriba, cada clavija nítida, sin manos.

## Glosario

term-band = gomita
means-band = un anillo pequeño y elástico.
others-band = elástico, elásticos, liga, ligas
term-loom = telar
means-loom = una tabla con clavijas en filas o en anillo.
others-loom = bastidor, marco
term-peg = clavija
means-peg = un poste vertical del telar, con un lado abierto.
others-peg = poste, postes, clavo, clavos, pin, pines
term-channel = lado abierto
means-channel = la ranura de un lado de la clavija, por donde entra el gancho.
others-channel = ranura, surco
term-hook = gancho
means-hook = la herramienta que toma un lazo y tira de él.
others-hook = aguja, ganchillo
term-loop = lazo
means-loop = la parte de una gomita que rodea una clavija.
others-loop = bucle, bucles, punto, puntos
term-cap = remate
means-cap = una gomita enrollada en una clavija, encima de todo lo que hay.
others-cap = tapa, tapón
term-half-twist = media torsión
means-half-twist = una gomita cruzada entre dos clavijas, de modo que forma un 8.
others-half-twist = medio giro, giro doble
term-free-end = extremo libre
means-free-end = los dos extremos de la última gomita, en el gancho o en el dedo.
others-free-end = cabo suelto, cabos sueltos
term-clip = cierre
means-clip = un gancho pequeño de plástico que cierra la pieza.
others-clip = broche, broches
term-chain = cadena
means-chain = gomitas en fila, cada una pasada por la anterior.
others-chain = –
term-extension = extensión
means-extension = una cadena sencilla que alarga la pieza: cada gomita nueva pasa por los dos extremos de la anterior.
others-extension = alargue, alargador

## Plan de rodaje y guion

heading-filming = Plan de rodaje: { $title }
filming-length = El vídeo dura unos { $minutes }, hablado a { $wpm } palabras por minuto. La cámara graba unos { $camera }.
heading-shots = Tomas
column-shot = Toma
column-at = En
column-long = Graba durante
column-do = Qué se hace
column-view = Qué tiene que verse
column-cut = Montaje
cut-fast = { $speed } veces más rápido
cut-pause = Muestra «para aquí»
heading-chapters = Capítulos
column-chapter = Capítulo
heading-filming-tips = Antes de grabar
tip-camera = Fija la cámara sobre el telar, con la punta cercana abajo en la imagen. No la muevas hasta que se gire el telar.
tip-hands = Aparta las manos de la clavija que se trabaja. No te muevas durante dos segundos después de cada paso.
tip-light = Luz de los dos lados, para que ninguna mano dé sombra a las clavijas.
tip-close = Graba de cerca y de lado el dibujo pequeño de la clavija cuando haya lazos unos sobre otros.
tip-faces = No grabes la cara ni el nombre de ningún niño sin permiso. Las normas locales van primero.
heading-script = Guion: { $title }
script-about = { $words } palabras, { $wpm } por minuto, { $minutes } en total.
column-said = Qué se dice
column-step = Paso

minutes = { $minutes ->
    [0] { $seconds } s
   *[other] { $minutes } min { $seconds } s
}

## Hoja de material

heading-kit = Hoja de material: { $title }
kit-about = { $n ->
    [one] Para 1 persona.
   *[other] Para { $n } personas, cada una con telar, gancho y una bolsa de gomitas.
}
heading-bag = Una bolsa para cada persona
heading-class = Para toda la clase
column-spares = Reserva
column-bag = En la bolsa
column-all = En total
class-bags = { $n ->
    [one] 1 bolsa
   *[other] { $n } bolsas
}
heading-tick = Marca
heading-buy = Para comprar
column-have = Hay
column-need = Hacen falta
column-packs = Paquetes
column-cost = Coste
packs-of = { $n } × { $size }
packs-none = nada
packs-unknown = no se conoce paquete
cost-open = pendiente
cost-total = Total
cost-part = Total de lo que se sabe
heading-timetable = Horario
timetable-about = Los tiempos se calculan con movimientos sueltos y con lo rápido que se aprende. Son para principiantes; mide los tuyos y cámbialos.
times-heard = { $n ->
    [one] Un paso dura lo mismo que en la grabación de quien enseña.
   *[other] { $n } pasos duran lo mismo que en la grabación de quien enseña.
}
column-part = Parte
column-show = Mostrar
column-make = Hacer
column-from = Desde
timetable-sum = En total
timetable-slow = Los más lentos pueden tardar la mitad más: unos { $n } min.
kit-safe = Cuenta gomitas y cierres al repartir y al recoger. Barre el suelo al final.
thing-hooks = Ganchos
thing-scissors = Tijeras
thing-clips-word = Cierres
thing-loom = Telares, { $rows } × { $pegs }

## Botones de la página y del apuntador

page-next = Siguiente
page-back = Atrás
page-first = Al principio
page-goto = Ir a
page-left = Para zurdos
page-right = Para diestros
page-large = Letra grande
page-read = Leer en voz alta
page-stop = Dejar de leer
page-progress = { $n } de { $count }
page-keys = Las flechas, deslizar el dedo o los botones avanzan y retroceden. Esta página funciona sin red y no envía nada; guarda tu sitio solo en este aparato.
page-what = Qué muestra el dibujo
page-tools = Ayudas para leer
page-moving = Recorrer los pasos
prompter-start = Empezar
prompter-stop = Parar
prompter-again = Desde el principio
prompter-slower = Más lento
prompter-faster = Más rápido
prompter-smaller = Más pequeño
prompter-larger = Más grande
prompter-mirror = Espejo
prompter-pace = { $wpm } palabras por minuto
prompter-pause = Pausa
prompter-keys = La barra espaciadora empieza y para, las flechas arriba y abajo cambian el ritmo; más y menos, el tamaño.

## Licencia

licence-as = Licencia de esta pieza y de su lección: { $licence }
licence-none = No se nombra ninguna licencia: todos los derechos son de quien la diseñó. Pregunta antes de copiarla o cambiarla.
licence-fonts = Las páginas llevan la letra Atkinson Hyperlegible, con la licencia que sigue.

## Qué sale mal: los errores

slip-loop-above = Tomas el lazo de encima del que toca.
slip-loop-below = Bajas demasiado el gancho y tomas el lazo de debajo del que toca.
slip-too-shallow = Bajas por dentro { $n ->
    [one] solo del lazo de arriba
   *[other] solo de los { $n } lazos de arriba
}, no de todos los de encima.
slip-outside = Subes el lazo por fuera, no por dentro de los de encima.
slip-wrong-peg = Lo pones en { $wrong }, no en { $right }.
slip-wrong-peg-lift = Lo haces en { $wrong }, no en { $right }.
slip-mirrored-peg = Lo pones al otro lado: en { $wrong }, no en { $right }.
slip-wrong-start = Tomas el lazo de { $wrong }, no de { $right }.
slip-step-skipped = Te saltas este paso.
slip-step-skipped-place = Olvidas una gomita.
slip-step-skipped-hook = Te saltas un lazo, que se queda donde está.
slip-step-skipped-bind = Olvidas la última gomita.
slip-step-skipped-shut = Sacas la pieza del telar antes de cerrarla.
slip-step-doubled = Haces este paso dos veces.
slip-steps-swapped = Haces antes el paso siguiente.
slip-wrong-order = Pasas los lazos de { $where } al revés, el de abajo primero.
slip-wrong-colour = Tomas una gomita de otro color ({ $letter }).
slip-cap-forgotten = Olvidas el remate.
slip-cap-wound-once = Enrollas la gomita una sola vez.
slip-twist-forgotten = Pones la gomita plana, sin su media torsión.
slip-twisted-by-accident = Cruzas la gomita sin querer, y forma un 8.
slip-loop-dropped = Se te cae el lazo levantado de camino a la otra clavija.
slip-one-of-several = Tomas un lazo de menos.
slip-neighbour-snagged = Enganchas también un lazo de la clavija de al lado y te lo llevas.
slip-two-at-once = Tomas un lazo de más.
slip-charm-not-slid = No deslizas lo que cuelga del gancho.
slip-miscounted-few = Pones una gomita de menos.
slip-miscounted-many = Pones una gomita de más.
slip-not-all-caught-clip = Se te escapa un lazo al poner el cierre.
slip-not-all-caught-knot = Se te escapa un lazo al pasar el cordón.
slip-not-all-caught-bind = No pasas la última gomita por el lazo de arriba.
slip-not-all-caught-some = Pasas la última gomita por un lazo de menos.
slip-caught-too-many = Pasas la última gomita por un lazo de más.
slip-one-loop-caught-clip = Pasas el cierre por un solo lazo.
slip-one-loop-caught-knot = Pasas el cordón por un solo lazo.
slip-one-loop-caught-bind = Pasas la última gomita por un solo lazo.
slip-end-slips-off = Se te sueltan los lazos de { $where } antes de quedar sujetos.
slip-loom-not-turned = No giras el telar, y haces todo lo demás en el otro lado.
slip-loom-turned = Giras antes el telar, y haces todo lo demás en el lado equivocado.
slip-wrong-end = Trabajas desde el extremo equivocado, con la última clavija primero.

## Qué pasa entonces

end-all = Al final la pieza se deshace.
end-falls = { $n ->
    [one] Al final se cae una gomita.
   *[other] Al final se caen { $n } gomitas.
}
end-unproved = { $n ->
    [one] Una gomita puede soltarse: nada la sujeta con seguridad.
   *[other] { $n } gomitas pueden soltarse: nada las sujeta con seguridad.
}
end-unproved-all = La pieza puede deshacerse: nada la sujeta con seguridad.
end-weak = Aguanta, pero si se rompe cierta gomita, se deshace toda.
end-looks = Aguanta, pero se ve distinta: { $bands }.
end-looks-many = Aguanta, pero se ve distinta: { $n } gomitas quedan de otro modo.
end-harmless = No cambia nada.
looks-band = gomita { $number } ({ $letter })
looks-band-more = una gomita de más

## Cómo se nota

sign-none = En el telar no se nota nada. Se nota al sacar la pieza.
sign-loose = Se ve bien, pero tras el paso { $step } lo notas: tira de la gomita { $number } ({ $letter }) y se suelta.
sign-refused = Lo notas en el paso { $step }, que entonces no se puede hacer.
sign-glance-now = Lo ves enseguida
sign-glance-step = Lo ves en el paso { $step }
sign-close-now = Desde arriba todo parece bien; mira de cerca enseguida
sign-close-step = Desde arriba todo parece bien; mira de cerca en el paso { $step }
sign-loops = { $when }: { $n ->
    [0] ningún lazo
    [one] 1 lazo
   *[other] { $n } lazos
} en { $where }; { $right ->
    [0] no debe haber ninguno
   *[other] debe haber { $right }
}.
sign-clip = { $when }: { $n ->
    [0] ningún lazo
    [one] 1 lazo
   *[other] { $n } lazos
} en el cierre; debe haber { $right }.
sign-cord = { $when }: { $n ->
    [0] ningún lazo
    [one] 1 lazo
   *[other] { $n } lazos
} en el cordón; debe haber { $right }.
sign-colours = { $when }: los lazos de { $where } son { $wrong } de abajo arriba, no { $right }.
sign-strands = { $when }: { $n ->
    [one] por dentro de un lazo de { $where } sube 1 hebra; { $right ->
        [0] no debe subir ninguna
       *[other] deben subir { $right }
    }.
   *[other] por dentro de un lazo de { $where } suben { $n } hebras; { $right ->
        [0] no debe subir ninguna
        [one] debe subir 1
       *[other] deben subir { $right }
    }.
}
sign-strands-few = { $when }: la gomita movida debe subir por dentro de todos los lazos de { $where }.
sign-strands-colour = { $when }: por dentro de un lazo en { $where } sube una hebra de otro color.

## Avisos: cortos, porque se dicen en voz alta

warn-loop-above = Toma el lazo que se dice, no el de encima.
warn-loop-below = No bajes tanto: el lazo de abajo se queda.
warn-too-shallow = Baja por dentro de todos los lazos, no solo del de arriba.
warn-outside = Sube el lazo por dentro de los de encima, no por fuera.
warn-wrong-peg = Cuenta las clavijas. Es fácil tomar la de al lado.
warn-wrong-peg-lift = Mira qué clavija toca ahora.
warn-mirrored-peg = Mira bien a qué lado va.
warn-wrong-start = Empieza en la clavija que se dice. Es fácil tomar la de al lado.
warn-step-skipped = No pierdas el sitio. Es fácil saltarse uno aquí.
warn-step-skipped-place = Cuenta las gomitas. Es fácil olvidar una.
warn-step-skipped-hook = No pierdas el sitio. Es fácil saltarse un lazo.
warn-step-skipped-bind = No olvides la última gomita.
warn-step-skipped-shut = Ciérrala antes de sacarla del telar.
warn-step-doubled = Hazlo una sola vez.
warn-steps-swapped = Sigue el orden.
warn-wrong-order = Trabaja los lazos en el orden que se dice.
warn-wrong-colour = Mira el color antes de estirar la gomita.
warn-cap-forgotten = No olvides el remate.
warn-cap-wound-once = Da todas las vueltas: una no basta.
warn-twist-forgotten = No olvides la media torsión. Sin ella la pieza se deshace.
warn-twisted-by-accident = Mira que la gomita quede plana, sin torcer.
warn-loop-dropped = Mantén el lazo en el gancho hasta que esté en la otra clavija.
warn-one-of-several = Cuenta los lazos del gancho antes de tirar.
warn-neighbour-snagged = Mantén el gancho cerca de su clavija, o engancha el lazo de al lado.
warn-two-at-once = Cuenta los lazos del gancho: es fácil llevarse uno de más.
warn-charm-not-slid = Deslízalo antes de dejar el lazo.
warn-miscounted = Cuenta las gomitas en voz alta.
warn-not-all-caught = Toma todos los lazos. Cuéntalos.
warn-caught-too-many = Cuenta los lazos por los que pasa el gancho.
warn-one-loop-caught = Pasa por todos los lazos, no por uno solo.
warn-end-slips-off = Sujeta los lazos hasta que todo esté cerrado.
warn-loom-not-turned = Gira el telar antes de seguir.
warn-loom-turned = Deja el telar como está: aquí no se gira.
warn-wrong-end = Empieza por la clavija que se nombra primero, no por el otro extremo.

## Cómo volver atrás

back-place = Quita la gomita ({ $letter }) de { $where }.
back-wind = Quita la gomita enrollada de { $where }.
back-hang = Quita la última gomita del gancho.
back-turn = Gira el telar otra vez.
back-hook = Toma el lazo de arriba de { $target }, bájalo por donde vino y ponlo otra vez en { $source }.
back-slide = Toma el lazo de arriba de { $target }, desliza lo que cuelga otra vez al gancho y pon el lazo en { $source }.
back-lift = Pasa el lazo otra vez por encima de los demás en { $where }, hasta que quede abajo del todo.
back-lift-on = Quita el lazo de { $target } y pásalo otra vez por encima de los demás en { $source }, hasta que quede abajo del todo.
back-bind = Saca otra vez la última gomita.
back-put = Quita otra vez de { $where } los lazos del extremo libre y déjalos en el gancho.
back-clip = Abre el cierre y sácalo.
back-knot = Desata el cordón y sácalo.
back-undo-all = Deshaz { $n ->
    [one] el último movimiento
   *[other] los últimos { $n } movimientos
}, primero el más nuevo, hasta { $move }.
back-start-again = Vuelve a empezar desde el paso { $n }: primero deshaz todo lo hecho desde ahí.
back-step = el paso { $n }
back-step-at = el paso { $n } ({ $move })
back-only = Haz { $steps } como en el dibujo.
back-do = Luego haz { $steps } como en el dibujo.
back-do-all = Luego haz otra vez { $n ->
    [one] el movimiento
   *[other] los { $n } movimientos
} desde { $first } hasta { $last }, como en el dibujo.

## Preguntas

ask-where = Pon el telar junto al dibujo. ¿En qué clavijas es distinto el número de lazos o un color?
ask-inside = Mira dentro de los lazos. ¿En qué clavijas suben por dentro hebras distintas de las del dibujo?
ask-crossed = ¿De qué clavijas salen gomitas hacia clavijas distintas de las del dibujo?
ask-loops = ¿Cuántos lazos hay en { $where }?
ask-top = ¿Qué letra tiene el lazo de arriba en { $where }?
ask-lowest = ¿Qué letra tiene el lazo de abajo en { $where }?
ask-colours = ¿Qué letras tienen los lazos en { $where }, de abajo arriba?
ask-strands = ¿Cuántas hebras suben por dentro de cada lazo en { $where }, de abajo arriba?
ask-strand-colours = ¿Qué letras tienen las hebras que suben por dentro de cada lazo en { $where }, de abajo arriba?
ask-leads = ¿A qué clavijas van las gomitas en { $where }, de abajo arriba?
answer-none = ninguna
answer-no-loop = ninguno
answer-strands = { $first } en el lazo más bajo, luego { $rest }

mistake-heading = Paso { $n }: qué puede salir mal
label-right = Bien
label-wrong = Mal
label-back = Cómo deshacerlo
look-heading = Para y mira
look-heading-round = Para y mira tras la vuelta { $n }
look-sooner = { $when }. { $line }
look-later = Cuando la última vuelta esté hecha: { $line }
look-why = Comprueba ahora: aquí los errores se arreglan con facilidad.
look-cure = Si no, deshaz los movimientos uno a uno hasta que coincida, y sigue desde ahí.
look-film = Muéstralo mal y luego bien: { $slip }
picture-wrong = Mal. { $slip } { $text }
picture-right = Bien. { $text }

wrong-open = ¿Algo se ve mal?
wrong-again = Empezar de nuevo
wrong-first = ¿Qué pasa?
wrong-look = Se ve distinto
wrong-stuck = No puedo hacer este paso
wrong-round = ¿Por dónde vas?
wrong-round-n = Vuelta { $n }
wrong-found = Lo más probable es esto
wrong-back = Cómo volver atrás
wrong-other = Otra cosa
wrong-lost = Retrocede un paso en esta página y pon el telar junto a ese dibujo. Deshaz hasta que los dos se vean igual, y sigue desde ahí.
wrong-nothing = Ningún error que conozcamos se ve así aquí. Retrocede un paso en esta página y prueba otra vez allí.

## Qué busca la revisión

words-side = izquierda, derecha, izquierdo, derecho
words-step = paso, pasos
words-minute = minuto, minutos, min
words-hour = hora, horas
words-never = nunca, no, jamás, lejos, sin
words-unsafe = toda la noche, por la noche, de noche, en la cama, al dormir, para dormir, mientras duermes, en el cuello, al cuello, bebé, bebés, en la boca, con los dientes, entre los dientes
words-child = niño, niños, niña, niñas, año, años, edad
words-vague = como quieras, como prefieras, da igual, por encima o por debajo, cualquier lazo, cualquier clavija, de algún modo, algún lazo, por ahí
words-top = lazo de arriba, lazo superior, lazo más alto
words-lowest = lazo más bajo, lazo de abajo, lazo inferior, lazos más bajos
words-colours = rojo, roja, azul, verde, amarillo, amarilla, blanco, blanca, negro, negra, naranja, rosa, morado, morada, marrón, gris

## La galería de una tanda

gallery-title = Lo que se hizo
gallery-search = Buscar
gallery-counted = { $n } a la vista
gallery-none = Nada aquí coincide con esas palabras.
gallery-picture = Imagen de la pieza en reposo
gallery-bands = { $n ->
    [one] 1 gomita
   *[other] { $n } gomitas
}
gallery-falls = { $bands }; no está demostrado que todas queden sujetas, así que no hay lección
gallery-files = { $n ->
    [one] 1 archivo
   *[other] { $n } archivos
}
gallery-left = { $language }, para zurdos
gallery-failed = { $n ->
    [one] 1 cosa no se pudo hacer
   *[other] { $n } cosas no se pudieron hacer
}
gallery-failure = { $what }: { $why }

## El atlas de técnicas

atlas-title = Atlas de técnicas
atlas-group-chains = cadenas
atlas-group-strips = tiras y escaleras
atlas-group-zigzags = zigzags
atlas-group-lozenges = rombos
atlas-group-tails = colas
atlas-group-tubes = tubos
atlas-group-mats = tapetes
atlas-group-hung = gomitas colgadas
atlas-group-points = puntas
atlas-group-forks = horquillas
atlas-group-rings = anillos cerrados
atlas-group-joined = cadenas unidas
atlas-group-fringes = flecos
atlas-width = Ancho en reposo
atlas-height = Alto en reposo
atlas-repeat = Una repetición
atlas-bands = Gomitas por repetición
atlas-stretch = Largo al tirar con 1 N
atlas-stack = Más lazos en una clavija
atlas-strain = Mayor estiramiento en el telar
atlas-snap = Si se rompe una gomita
atlas-snaps = { $n ->
    [0] no cae ninguna otra
    [one] en el peor caso cae 1 más
   *[other] en el peor caso caen { $n } más
}
atlas-minutes = La muestra, quien empieza
atlas-minutes-about = unos { $n } min
atlas-slips = Errores que hacen caer gomitas
atlas-bracelet = Unos 15 cm
atlas-bracelet-about = { $bands } gomitas, { $n } min
atlas-wrists = Sirve para muñecas
atlas-from-to = de { $low } a { $high }
atlas-difficulty = Dificultad
atlas-where = Dónde se falla
atlas-slip = { $n ->
    [one] Paso { $steps }
   *[other] Pasos { $steps }
}: { $slip } { $end }
atlas-times = { $n } veces

## El esquema de un tapete

chart-about = Un tapete de { $across } gomitas de ancho y { $down } hileras: { $bands } gomitas en total, unos { $width } por { $height } en reposo.
chart-colours = Prepara estas gomitas
chart-working = Cómo se trabaja una hilera
chart-loom = Necesitas { $pegs } clavijas en una línea: une telares por los extremos. La clavija A1 es la más cercana a ti.
chart-lay = Pon una hilera: una gomita sobre A1 y A2, la siguiente sobre A2 y A3, y así hasta { $last }, en los colores de la hilera.
chart-lift = Desde la segunda hilera, recorre las clavijas con el gancho: levanta los dos lazos más bajos por encima de los dos nuevos y déjalos caer; en la primera y la última clavija se levanta un lazo por encima de otro.
chart-front = Vista de frente, la hilera 1 es el borde de arriba de la imagen, y la gomita entre A1 y A2 queda a la izquierda.
chart-end = Tras la última hilera pasa un cordón por todos los lazos, saca el tapete y anuda el cordón sin fruncir el borde.
chart-heading = El esquema
chart-rows = Las hileras, desde la clavija A1
chart-row = Hilera { $first }: { $runs }
chart-row-span = Hileras { $first } a { $last }, todas iguales: { $runs }
