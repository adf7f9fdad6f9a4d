# Lo que dicen las comprobaciones, en español. Minúsculas, sin punto final, palabras de taller.
# Lo que lleva lazos va siempre después de «en», para que ninguna contracción quede mal.

## Leer el documento

file-unreadable = no se puede leer { $file }: { $reason }
    .hint = mira el nombre y quién puede leer el archivo
not-text = esto no es un archivo de texto
    .hint = un patrón es un texto JSON en UTF-8
too-large = el archivo pasa de { $limit_mb } MB, lo máximo que se lee
    .hint = quita lo que no hace falta; escribe repeticiones en vez de copias
not-json = el texto no es JSON válido: { $reason }
    .hint = arregla el texto en ese sitio
not-a-pattern = { $reason }
    .hint = { $hint }
line-unreadable = { $reason }
    .hint = { $hint }
sentence-unread = no se ha entendido esta frase: { $sentence }
    .hint = di qué se hace, con qué gomita, de qué clavija a cuál; o escribe el movimiento como en docs/notation.md
no-steps-read = no se ha podido leer ningún paso en este texto
    .hint = escribe una acción por frase: qué gomita, desde qué clavija, hacia dónde
steps-missing = { $count ->
    [one] en este texto falta el paso { $first }
   *[other] en este texto faltan los pasos { $first } a { $last }
}
    .hint = aquí salta la numeración de los pasos: copia también lo que falta o escríbelo en este lugar
language-unread = todavía no se pueden leer textos en este idioma ({ $language })
    .hint = escríbelo en español, inglés o alemán, o escribe los pasos como en docs/notation.md
words-leave-open = { $question }
    .hint = dilo en el texto; hasta entonces vale lo más probable
text-too-long = el texto es demasiado largo; solo se leen sus primeros { $limit } caracteres
    .hint = da a cada pieza un texto propio
unknown-version = { $version ->
    [missing] este patrón no dice su versión; este programa lee las versiones 1 a { $newest }
   *[other] este patrón es de la versión { $version }; este programa lee las versiones 1 a { $newest }
}
    .hint = usa un pegwright más nuevo, o corrige el campo pegwright
captions-too-large = los subtítulos ocupan más de los { FIXED($limit) } bytes que se leen
    .hint = divide la grabación
captions-bad-bytes = los subtítulos no están en UTF-8; algunas letras pueden leerse mal
    .hint = guarda los subtítulos en UTF-8
captions-empty = en estos subtítulos no se dice nada
    .hint = usa WebVTT, SRT o líneas que empiecen con un tiempo, como [1:05]
cue-unreadable = este subtítulo no tiene un tiempo legible y se deja fuera
    .hint = escribe su tiempo como en los demás
cue-backward = este subtítulo termina antes de empezar y se deja fuera
    .hint = corrige sus tiempos
cues-overlap = este subtítulo empieza antes de que termine otro anterior
    .hint = corrige sus tiempos si las palabras van una tras otra
recogniser-missing = esto es sonido o vídeo, y no hay instalado ningún reconocedor que lo escuche
    .hint = haz que un sitio de vídeos, un programa de reuniones o un móvil escriba los subtítulos, y da ese archivo (WebVTT, SRT); o instala el reconocedor con pip install 'pegwright[hear]'
model-missing = { $given ->
    [0] el reconocedor necesita un modelo del idioma
   *[other] en { $folder } no hay un modelo que el reconocedor lea
  }
    .hint = da su carpeta con --model, o da subtítulos escritos en otra parte (docs/listening.md)
model-english-only = el modelo de { $folder } solo entiende inglés
    .hint = da un modelo para varios idiomas, o subtítulos escritos en otra parte
sound-unreadable = este sonido o vídeo no se puede leer
    .hint = mira si se reproduce en otra parte, o da sus subtítulos
recording-too-long = solo se comparan las primeras { FIXED($limit) } palabras
    .hint = divide la grabación
chapter-not-heard = el capítulo «{ $title }» no se oye en la grabación
    .hint = mira si falta o si se dijo con otras palabras
recording-contradicts = { $time }{ $step ->
    [0] {""}
   *[other] , paso { $step }
}: { $what }
    .hint = dilo bien en otra grabación, o corrige el patrón si la grabación acierta
recording-unclear = { $time }{ $step ->
    [0] {""}
   *[other] , paso { $step }
}: quizá { $what }
    .hint = escúchalo ahí: los subtítulos pueden haber oído mal

## Motivos y repeticiones

motif-twice = dos motivos se llaman «{ $name }»; se trabaja el primero
    .hint = da al segundo un nombre propio
motif-unknown = no hay ningún motivo llamado «{ $name }»
    .hint = { $count ->
    [0] aquí no hay motivos
   *[other] los motivos de aquí son: { $known }
}
motif-in-itself = el motivo «{ $name }» se trabaja dentro de sí mismo
    .hint = escribe en su lugar una repetición; un motivo no puede contenerse a sí mismo
slot-empty = al motivo «{ $name }» no se le dice qué color es «{ $slot }»
    .hint = nombra un color para «{ $slot }»
slot-unknown = el motivo «{ $name }» no tiene nada llamado «{ $slot }» que rellenar
    .hint = mira lo que enumera el motivo
count-unknown = la repetición pide «{ $name }» vueltas, y nada dice cuántas son
    .hint = escribe un número, o pon «{ $name }» entre las cuentas del motivo
nested-too-deeply = hay repeticiones dentro de repeticiones a más de { $limit } niveles
    .hint = haz motivos de las de dentro
too-many-moves = el patrón pasa de { FIXED($limit) } movimientos, así que no se hace ninguno
    .hint = repite menos veces
too-many-passes = aquí pasan tantos lazos por lazos que no cabe llevar la cuenta
    .hint = haz la pieza por partes; nadie podría trabajarla así
too-many-refused = { $count } movimientos no se pudieron hacer, así que los { $left } siguientes no se prueban
    .hint = arregla los primeros y mira otra vez
stack-full = en { HOLDER($peg) } habría más de { $limit } lazos: { $move }
    .hint = trabaja antes algunos lazos, o repártelos en más clavijas
too-many-pegs = el telar tiene { FIXED($pegs) } clavijas; como mucho se puede trabajar con { FIXED($limit) }
    .hint = toma un telar más pequeño
pegs-out-of-reach = entre { $peg } y { $other } no hay ninguna clavija en { FIXED($gap_mm, digits: 0) } mm; los brazos alcanzan { FIXED($limit_mm, digits: 0) } mm
    .hint = mira dónde están esas dos clavijas: las longitudes son en mm
pegs-in-one-place = las clavijas { $peg } y { $other } están en el mismo sitio
    .hint = mueve una de las dos o quítala
off-the-rows = { $reason }
    .hint = empieza la repetición más adentro, o avánzala menos filas o clavijas

## Movimientos que no se pueden hacer

peg-unknown = no hay ninguna clavija { $peg } en este telar: { $move }
    .hint = el telar tiene { $pegs }{ $more ->
    [0] {""}
   *[other] …
}
peg-double = dos clavijas se llaman { $peg }; solo se usa la primera
    .hint = da a una de ellas otra dirección
peg-twice = { $peg } aparece dos veces en un movimiento: { $move }
    .hint = nombra cada sitio una vez
peg-bare = no hay ningún lazo en { HOLDER($peg) } que tomar: { $move }
    .hint = coloca o engancha antes una gomita ahí
out-of-reach = { $peg } y { $other } están a { FIXED($gap_mm, digits: 0) } mm; los brazos alcanzan { FIXED($limit_mm, digits: 0) } mm: { $move }
    .hint = elige clavijas más cercanas entre sí
peg-inside-band = la gomita rodearía { $peg } por fuera sin hacer ahí un lazo: { $move }
    .hint = deja fuera { $peg }, o coloca la gomita en menos clavijas
peg-enclosed = la gomita se cerraría alrededor de { $peg }, que no nombra: { $move }
    .hint = nombra también { $peg } donde la gomita da la vuelta, o colócala en clavijas sin ninguna en medio
turns-mismatch = se dan vueltas para { $given } clavijas, pero la gomita va en { $pegs }: { $move }
    .hint = da un número de vueltas por clavija, o ninguno
twists-mismatch = se dan medias torsiones para { $given } tramos, pero entre { $pegs } clavijas hay un tramo menos: { $move }
    .hint = da un número por cada tramo de clavija a clavija, o ninguno
loop-missing = no hay lazo { $loop } en la clavija { $peg }, que lleva { $loops }: { $move }
    .hint = cuenta los lazos desde 1 empezando abajo, o desde −1 empezando arriba
not-so-many-above = el gancho no puede pasar por { $through } lazos de encima en la clavija { $peg }, donde hay { $above }: { $move }
    .hint = quita el número para pasar por todos
same-peg = el lazo volvería a { $peg }, de donde viene: { $move }
    .hint = nombra otra clavija
nothing-to-lift-over = no hay nada encima del lazo en la clavija { $peg } sobre lo que pasarlo: { $move }
    .hint = coloca antes una gomita ahí
hook-empty = no cuelga nada del gancho que deslizar: { $move }
    .hint = cuelga antes una gomita
end-unknown = todavía no hay aquí un extremo libre llamado «{ $end }»: { $move }
    .hint = acaba antes con una última gomita
end-taken = ya hay un extremo libre llamado «{ $end }»: { $move }
    .hint = da otro nombre a este extremo
loops-uneven = el extremo libre «{ $end }» tiene { $loops } lazos, que no se reparten por igual entre { $pegs } clavijas: { $move }
    .hint = nombra una clavija, o tantas como lazos

## Lo que se ve en el trabajo

loop-dragged = el lazo de la gomita { $band } ({ $colour }) en { HOLDER($peg) } se mueve mientras { $count ->
    [one] la gomita { $others } pasa
   *[other] las gomitas { AND($others) } pasan
} por él
    .hint = trabaja primero el lazo de arriba; así no se arrastra nada
band-not-worked = la gomita { $band } ({ $colour }) nunca se trabaja: nada de ella se engancha, se pasa por encima ni se sujeta
    .hint = trabájala, o déjala fuera
loop-left = { $count ->
    [one] queda un lazo
   *[other] quedan { $count } lazos
} en la clavija { $peg } sin nada que pase por dentro: { $loops }
    .hint = mira si falta ahí un movimiento, o si se tomó el lazo de encima
start-not-held = el lazo de la gomita { $band } ({ $colour }) no pasa por nada: no hay ningún lazo encima en { HOLDER($peg) }
    .hint = pon un remate o una primera gomita en { HOLDER($peg) }, o empieza una clavija más adelante
channel-opens-away = el gancho tendría que entrar en { HOLDER($peg) } por su lado cerrado: su lado abierto mira hacia el otro lado{ $more ->
    [0] {""}
    [one] , y 1 vez más después
   *[other] , y { $more } veces más después
}
    .hint = gira el telar antes de sacar lazos, o indica hacia qué lado se abren las clavijas de tu telar
stack-too-high = { $loops } lazos en la clavija { $peg } alcanzan { FIXED($stack_mm, digits: 1) } mm; en la clavija caben { FIXED($room_mm, digits: 1) } mm
    .hint = trabaja algunos antes de añadir más, o usa un telar de clavijas más altas
no-finish = nada cierra la pieza: no hay cierre ni nudo
    .hint = acaba con un cierre o un nudo en los últimos lazos
catches-one = { $kind ->
    [clip] el cierre
   *[knot] el nudo
} sujeta 1 de { $loops } lazos en { HOLDER($peg) }
    .hint = sujétalos todos; uno solo se suelta, y el resto se deshace
catches-more = { $kind ->
    [clip] el cierre
   *[knot] el nudo
} debe sujetar { $wanted } lazos en { HOLDER($peg) }, donde no hay más que { $loops }
    .hint = quita el número para sujetarlos todos, y mira si falta ahí un lazo
laid-after-clip = se coloca una gomita después de que el cierre del movimiento { $clip } haya cerrado la pieza{ $more ->
    [0] {""}
   *[other] , y { $more } más
}
    .hint = cierra la pieza al final
letter-twice = dos colores tienen la letra { $letter }; vale el primero
    .hint = da a uno otra letra
colour-not-listed = el color { $letter } se usa pero no está en la lista de colores
    .hint = ponlo en la lista, para que sus gomitas se puedan nombrar, pesar y comprar
colour-unused = el color { $letter } ({ $name }) está en la lista pero nunca se usa
    .hint = quítalo de la lista, o úsalo
band-kind-twice = dos clases de gomita se llaman «{ $name }»; vale la primera
    .hint = da a una otro nombre
band-kind-unknown = el color { $letter } es de una clase de gomita llamada «{ $band }», que no está en la lista
    .hint = { $count ->
    [0] no hay ninguna clase de gomita en la lista
   *[other] están en la lista: { $known }
}

## Lo que se ve en la lección

contact-missing = no se nombra a nadie a quien avisar de los errores
    .hint = pon tu nombre o el de tu taller como autoría
licence-missing = nada dice quién puede copiar o enseñar la pieza
    .hint = nombra una licencia, como CC BY 4.0
about-missing = nada dice qué es la pieza ni a quién le va bien
    .hint = escribe una frase o dos en las notas
level-low = el nivel es { $level ->
    [basic] «básico»
    [easy] «fácil»
   *[intermediate] «medio»
}, pero la pieza tiene lo que la hace { $reckoned ->
    [easy] de nivel «fácil»
   *[intermediate] de nivel «medio»
}: { $reasons }
    .hint = sube el nivel, o déjalo si enseñas antes estas técnicas
motif-unused = el motivo «{ $name }» nunca se trabaja
    .hint = trabájalo, o quítalo
repeat-of-none = una repetición se hace cero veces, así que nunca se llega a sus pasos
    .hint = escribe cuántas veces, o quita la repetición
side-named = el texto dice «{ $word }»; en la edición en espejo es el otro lado
    .hint = nombra clavijas en lugar de lados, o cambia el texto para la otra mano
term-mixed = el texto dice «{ $word }» donde la lección dice «{ $term }»
    .hint = usa una palabra para cada cosa, o haz de «{ $word }» tu palabra en toda la lección
text-peg-unknown = el texto nombra { $peg }, y esa clavija no está en el telar
    .hint = corrige la clavija
text-peg-moves = el texto nombra { $peg }, pero su paso se repite en otras clavijas
    .hint = dilo de modo que valga para todas las vueltas
text-step-unknown = el texto habla del paso { $number }, y la lección tiene { $steps }
    .hint = corrige el número
text-hard = el texto es difícil de leer para alguien de doce años ({ $words } palabras por frase, o palabras largas)
    .hint = escribe frases más cortas con palabras de todos los días
text-length-wrong = el texto dice «{ $quote }»; la pieza mide { $counted } mm
    .hint = escribe la medida calculada, o déjala a la lección, que la imprime
text-time-wrong = el texto dice «{ $quote }»; la primera vez lleva más o menos { $counted } min
    .hint = escribe el tiempo calculado, o déjalo a la lección, que lo imprime
text-unsafe = el texto dice «{ $word }», y eso no es seguro con piezas pequeñas y gomitas apretadas
    .hint = di quién no debe tenerla y cuándo se quita, como hacen los cuidados
text-vague = el texto dice «{ $word }», pero solo de una manera sale esta pieza
    .hint = di cuál: la lección lo hace
text-loop-wrong = el texto dice «{ $word }», pero el paso toma otro
    .hint = di qué lazo toma el paso, o cambia el paso
text-colour-wrong = el texto dice «{ $word }», pero el paso no toca ninguna gomita de ese color
    .hint = corrige el color en el texto o en el paso
text-misspelt = «{ $word }» está mal escrito
    .hint = quizá se quiso decir { OR($meant) }
colour-name-twice = los colores { $one } y { $other } tienen el mismo nombre, { $name }
    .hint = da a cada uno su nombre, o haz de ellos un solo color
clip-unwarned = aquí un cierre une dos extremos, y el paso no avisa
    .hint = avisa: los extremos que saltan sueltan todas las gomitas y dan en la cara
translation-missing = falta la versión { $language ->
    [de] alemana
    [en] inglesa
    [es] española
   *[other] traducida
} de «{ $text }»; la lección la imprime tal cual
    .hint = añádela en translations, o lee la lección en el idioma del patrón
translation-outdated = hay una traducción ({ $language }) de «{ $text }», pero el patrón ya no lo dice
    .hint = quítala, o pon el texto nuevo en su lugar
colours-alike = cuesta distinguir los colores { $one } y { $other }; así los ven { AND($who) }
    .hint = haz uno de ellos más claro o más oscuro; las letras y las tramas ayudan en el papel, no en el montón
lesson-disagrees = la lección y el trabajo no coinciden ({ $what }): dice { $said }, se cuentan { $counted }
    .hint = planea otra vez la lección a partir del patrón

## ¿Aguanta?

band-falls = { $reason }{ $hanging ->
    [0] {""}
    [one] ; otra se sujeta solo por { $count ->
        [one] ella
       *[other] estas
    }
   *[other] ; otras { $hanging } se sujetan solo por { $count ->
        [one] ella
       *[other] estas
    }
}{ $loose ->
    [0] {""}
   *[other] ; la gomita { $loose } ({ $colour }) ya está suelta en el telar ({ $since })
}
    .hint = haz que por cada gomita pase un lazo y que los últimos queden sujetos
band-not-proved = { $count ->
    [one] de la gomita { AND($named) } no se pudo demostrar ni que aguanta ni que se suelta
   *[other] de las gomitas { AND($named) } no se pudo demostrar ni que aguantan ni que se sueltan
}: { $reason }
    .hint = pruébalo en el telar antes de enseñarlo
losses-left-out = lo que cae si se rompe una gomita se calcula hasta con { $limit } gomitas; esta pieza tiene { $bands }
    .hint = pregunta por una pieza más corta con la misma repetición

## El orden del trabajo

order-not-found = no se encontró ningún orden en el que aguanten las { $bands } gomitas; se probaron { $tried }
    .hint = pon una gomita que una lo que cuelga suelto, enrolla un remate en la clavija donde empieza el trabajo, o trabaja una parte a mano y vuelve a preguntar
order-none = ningún orden de trabajo sujeta las { $laid } gomitas; { $count ->
    [0] cada una se puede sujetar, pero nunca todas a la vez
    [one] la gomita { $bands } no se puede sujetar nunca
   *[other] las gomitas { AND($bands) } no se pueden sujetar nunca
}
    .hint = pon una gomita que una lo que cuelga suelto, o enrolla un remate en la clavija donde empieza el trabajo
order-pinned = no se encontró ningún orden que conserve { $pinned }{ $count ->
    [0] {" "}con las gomitas como están puestas
   *[other] {" "}junto con { AND($others) }
}
    .hint = quita ese movimiento y vuelve a preguntar, o trabaja esa parte a mano
nothing-to-work = ninguna gomita está lista para trabajarla: hay { $bands } puestas y se probaron { $tried } órdenes
    .hint = pon cada gomita sobre dos clavijas y deja fuera lo que hace el gancho; o pide que la pieza se trabaje de nuevo
holds-already = la pieza ya está trabajada: las { $bands } gomitas aguantan
    .hint = pide que se trabaje de nuevo para ver otros órdenes
no-simpler-order = no se encontró un orden más sencillo de los mismos movimientos; se compararon { $tried }
    .hint = busca otros órdenes: trabajan de otra manera las gomitas puestas, y puede salir otra pieza
fall-with-it = { $bands ->
    [one] otra gomita también cae, sujeta solo por lo que cae
   *[other] otras { $bands } gomitas también caen, sujetas solo por lo que cae
}
    .hint = arregla lo que lo empieza: entonces aguantan también
mend-not-found = no se encontró ni un cambio ni dos juntos con los que aguanten todas las gomitas; se probaron { $tried }
    .hint = vuelve a la última parte que aguantaba, o pon las gomitas y pide un orden de trabajo

## Tamaño y cuentas

band-slack = una gomita ({ $name }) queda floja en { AND($pegs) }: { FIXED($taut_mm, digits: 1) } mm de vuelta, { FIXED($rest_mm, digits: 1) } mm en reposo{ $more ->
    [0] {""}
   *[other] , y { $more } más como esta
}
    .hint = usa gomitas más pequeñas o un telar de clavijas más separadas, o enrolla la gomita una vez más
band-taut = una gomita ({ $name }) se estira hasta { FIXED($stretch, digits: 1) } veces su largo en { AND($pegs) }{ $more ->
    [0] {""}
   *[other] , y { $more } más como esta
}
    .hint = las gomitas se estiran hasta unas tres veces su largo; prueba con una tuya, con los ojos protegidos
band-overstretched = una gomita ({ $name }) se estira hasta { FIXED($stretch, digits: 1) } veces su largo en { AND($pegs) } y puede romperse{ $more ->
    [0] {""}
   *[other] , y { $more } más como esta
}
    .hint = usa clavijas más juntas o gomitas más grandes; una gomita que se rompe puede dañar un ojo
stated-count-wrong = { $what }: se declaran { $stated }, pero el patrón lleva { $counted }
    .hint = corrige el número o los pasos
text-count-wrong = el texto dice «{ $quote }», pero el patrón lleva { $counted }
    .hint = corrige el número, o di de qué parte de la pieza se habla

## Muñecas

wrist-unreadable = «{ $said }» no se entiende como muñeca
    .hint = escribe un contorno con su unidad (16.5 cm, 6 1/2 in), una talla ({ $sizes }) o una edad (age 8)
wrist-nonsense = { $what } no puede ser
    .hint = mide alrededor de la muñeca, justo pasado el hueso, y mira la unidad
wrist-unusual = una muñeca de { $said } queda fuera de { FIXED($low_cm, digits: 1) } a { FIXED($high_cm, digits: 1) } cm, donde los estudios encontraron muñecas
    .hint = mide otra vez, y mira la unidad
girth-unreadable = «{ $said }» no da ningún contorno
    .hint = escribe el contorno con su unidad (tobillo 22 cm, cuello 36 cm, botella 9 cm){ $part ->
        [finger] {" "}o una talla de anillo (anillo 54)
        [ankle] {" "}o ankle adult
        [neck] {" "}o neck adult
       *[other] {""}
    }
girth-nonsense = { $what } no puede ser: se leen de { FIXED($low_cm, digits: 1) } a { FIXED($high_cm, digits: 1) } cm
    .hint = mide otra vez alrededor, y mira la unidad
girth-unusual = { $part ->
        [ankle] un tobillo
        [neck] un cuello
        [finger] un dedo
        [key] una llave
        [bottle] una botella
       *[wrist] una muñeca
    } de { $said } queda fuera de { FIXED($low_cm, digits: 1) } a { FIXED($high_cm, digits: 1) } cm, donde se encontraron esos contornos
    .hint = mide otra vez, y mira la unidad
girth-neck = en el cuello una pieza tiene que abrirse sola si se engancha: una goma cerrada puede estrangular
    .hint = ciérrala con un broche que se suelte con un tirón suave (de seguridad), nunca con nudo ni cierre firme; no para niños, ni para dormir o jugar; vale lo que digan las normas del lugar
girth-finger = no pongas nunca una gomita apretada en un dedo
    .hint = un anillo tiene que girar y salir con facilidad; quítalo, o córtalo, enseguida si el dedo se pone pálido, azul, hinchado o dormido
wrist-too-young = no se calcula ninguna muñeca para una edad de { SHORT($years) } años: las gomitas pequeñas no son para menores de 3
    .hint = es fácil atragantarse con gomitas y cierres pequeños; mantenlos lejos, y sigue las normas locales

## En el telar

band-near-breaking = una gomita ({ $name }) en { AND($pegs) } está a { FIXED($stretch, digits: 1) } veces su largo y tira con { FIXED($force_n, digits: 1) } N{ $more ->
    [0] {""}
   *[other] , y { $more } más como esta
}; las gomitas se rompen a partir de unas { SHORT($breaks) } veces
    .hint = apúntala hacia abajo y lejos de las caras, ponte gafas; mejor usa clavijas más juntas o gomitas más grandes

## Cómo sienta la pieza

fit-loose = con { FIXED($length_mm) } mm la pieza queda suelta en { $part ->
        [ankle] un tobillo
        [neck] un cuello
        [finger] un dedo
        [key] una llave
        [bottle] una botella
       *[wrist] una muñeca
    } de { FIXED($wrist_mm) } mm
    .hint = quita gomitas de extensión o una repetición: de { FIXED($low_mm) } a { FIXED($high_mm) } mm en reposo quedaría ajustada
fit-tight = con { FIXED($length_mm) } mm de largo la pieza aprieta en { $part ->
        [ankle] un tobillo
        [neck] un cuello
        [finger] un dedo
        [key] una llave
        [bottle] una botella
       *[wrist] una muñeca
    } de { FIXED($wrist_mm) } mm{ $pulls }
    .hint = añade gomitas de extensión hasta que mida de { FIXED($low_mm) } a { FIXED($high_mm) } mm en reposo; un dedo tiene que pasar por debajo con facilidad, y hay que quitarla enseguida si la piel se pone pálida, hinchada o dormida
fit-hand = para pasar { $part ->
        [ankle] un talón
        [neck] una cabeza
        [finger] un nudillo
        [key] una llave
        [bottle] una botella
       *[wrist] una mano
    } de { FIXED($hand_mm) } mm hay que abrir la pieza tirando con { FIXED($pull_n) } N
    .hint = añade gomitas de extensión, o póntela abierta y ciérrala ahí
fit-unmeasured = se sabe cómo tira la pieza hasta { FIXED($known_mm) } mm; { $part ->
        [ankle] el talón
        [neck] la cabeza
        [finger] el nudillo
        [key] la llave
        [bottle] la botella
       *[wrist] la mano
    } necesita { FIXED($needed_mm) } mm
    .hint = estírala más, en el modelo o con pesos, con los ojos protegidos
fit-not-closed = esta pieza no se cierra alrededor de una muñeca: ningún cierre une dos de sus extremos, así que solo se dice su tamaño
    .hint = si es para llevarla puesta, une dos de sus extremos con un cierre
fit-falls-apart = esta pieza se deshace, así que no le queda bien a ninguna muñeca
    .hint = mira lo que la comprobación dice de las gomitas que se sueltan, y arregla eso primero
extension-nowhere = { $bands ->
    [one] haría falta 1 gomita
   *[other] harían falta { $bands } gomitas
} de extensión, y el patrón no tiene un extremo libre donde ponerlas
    .hint = acaba con una última gomita de extremos libres, y pon ahí el cierre
stretch-curve-nonsense = la curva de estiramiento no tiene sentido: { $reason }
    .hint = la pieza no llegó al reposo del mismo modo con cada tirón; cuélgale pesos, con los ojos protegidos, y mídela a mano
gauge-nonsense = { $what } sale de { FIXED($value_mm, digits: 1) } mm
    .hint = mide las dos piezas en reposo del mismo modo, y cuenta otra vez en qué se diferencian

## Calibrar

measure-nonsense = { $what } de { SHORT($value) } { $unit } no tiene sentido: { $reason }
    .hint = { $cure }
measure-few = { $count ->
    [0] ningún peso es muy poco
    [one] 1 peso es muy poco
   *[other] { $count } pesos distintos son muy pocos
} para { $what }; { $needed ->
    [one] hace falta 1
   *[other] hacen falta { $needed }
}
    .hint = cuelga más pesos, desde floja hasta unas tres veces el largo
density-odd = del largo plano, el grosor y el peso de 100 sale una densidad de { FIXED($density_g_cm3, digits: 2) } g/cm³; las gomitas de silicona, caucho o TPE tienen de { FIXED($low, digits: 2) } a { FIXED($high, digits: 2) }
    .hint = lo que más pesa es el grosor: mídelo en varias gomitas juntas; después pesa y cuenta otra vez
modulus-odd = el módulo de cizalla sale de { FIXED($shear_mpa, digits: 3) } MPa; las gomitas pequeñas tienen de { FIXED($low, digits: 2) } a { FIXED($high, digits: 2) }
    .hint = mira la unidad de los pesos (gramos), el grosor, y si colgaba una sola gomita
moduli-tangled = los pesos estiran la gomita de { FIXED($low, digits: 1) } a { FIXED($high, digits: 1) } veces, y eso no separa C10 de C01
    .hint = su suma se conoce bien y basta hasta ahí; para separarlos, cuelga pesos hasta unas tres veces
stretch-misfit = con { SHORT($mass_g) } g la gomita medía { FIXED($length_mm, digits: 1) } mm; según el ajuste serían { FIXED($fitted_mm, digits: 1) } mm
    .hint = mide otra vez ese peso; se tomó la regla por exacta hasta { SHORT($reading_mm) } mm

## Las existencias

not-a-stash = { $reason }
    .hint = las existencias enumeran paquetes con su tamaño y su precio
stash-lacks = en las existencias no hay paquete que comprar ({ $what }), así que el coste queda abierto
    .hint = añade un paquete con su precio
currency-missing = hay precios sin moneda
    .hint = nombra una, tal como la escribe tu banco

## Imágenes que se vuelven tapetes

picture-unreadable = no se puede leer esta imagen: { $reason }
    .hint = guárdala como PNG o JPEG y prueba con ese archivo
picture-too-large = esta imagen es demasiado grande: se leen como mucho 100 MB y { $limit } millones de puntos
    .hint = guarda una copia más pequeña; a un tapete le bastan unos cientos de puntos por lado
picture-all-clear = en esta imagen no hay nada que ver: toda es transparente
    .hint = guárdala con lo que tiene detrás
picture-clear-parts = el { $share } % de esta imagen es transparente y se vuelve blanco
    .hint = si quieres otro color, ponlo detrás
picture-moves = esta imagen se mueve: el primero de sus { $frames } cuadros será el tapete
    .hint = guarda el cuadro que quieras como imagen aparte
picture-one-colour = todo el tapete sale de un solo color: { $name }
    .hint = toma una imagen con más contraste, recórtala más o da más colores
colour-runs-short = el tapete lleva { $needed } { $needed ->
    [one] gomita
   *[other] gomitas
} de { $name }; tienes { $have }
    .hint = haz el tapete más pequeño, deja fuera ese color o consigue más antes de empezar

## Variantes

variant-left-out = la variante { $name } se deja fuera: { $why }
    .hint = pide otra, o cambia antes la pieza
colourway-alike = la combinación { $number } tiene colores que no todo ojo distingue
    .hint = añade a las existencias gomitas de un color más claro o más oscuro
colourway-runs-short = la combinación { $number } lleva más gomitas de un color de las que tienes
    .hint = consigue más antes de empezar

## La tabla de errores

not-a-slip-table = { $reason }
    .hint = una tabla da probabilidades a las clases y clases a los errores
slip-unknown = no hay ningún error llamado { $slip }
    .hint = los errores son: { $known }
slip-class-unknown = no hay ninguna clase llamada { $given }
    .hint = nombra una de estas, o ponla en la lista: { $known }

## Muchos iguales

more-of-the-same = y { $count } más de lo mismo: { $of }
    .hint = arregla los primeros y mira otra vez

## La forma en reposo

bands-drawn-crossing = una hebra de esta gomita está dibujada a través de otra, con { FIXED($gap_mm, digits: 3) } mm entre ellas
    .hint = dibuja las hebras separadas; nada dice a qué lado va cada una
bands-lie-loose = la pieza se deshace al tirar de ella: { $loose } de sus { $bands } gomitas no están unidas al resto y quedan al lado
    .hint = el largo y el ancho son los de lo que sigue unido; mira lo que la comprobación dice de esas gomitas
nothing-hangs-together = nada queda unido: las { $bands } gomitas están sueltas, así que no hay largo
    .hint = mira lo que la comprobación dice de las gomitas que se salen
length-impossible = salió un largo de { FIXED($length_mm) } mm, que las gomitas juntas no alcanzan: no se indica
    .hint = mira lo que la comprobación dice de las gomitas que se salen
rests-otherwise = la pieza queda de otro modo que como se trabaja: las gomitas separadas por muchos eslabones o vueltas no quedan en ese orden
    .hint = mira con cuidado la imagen y las medidas; puede que esté amontonada
rest-not-reached = la pieza no llegó al reposo tras { $iterations } pasos: las fuerzas son { PERCENT($drop, digits: 2) } de lo que eran
    .hint = mira la imagen con cuidado, o permite más pasos
rest-interrupted = el cálculo se paró tras { $iterations } pasos; la forma es la alcanzada hasta ahí
    .hint = déjalo seguir hasta la forma en reposo

## De lo que todo se sirve

list-and = { $initial ->
    [i] { $head } e { $last }
   *[other] { $head } y { $last }
}
list-or = { $initial ->
    [o] { $head } u { $last }
   *[other] { $head } o { $last }
}
holder = { $kind ->
    [hook] el gancho
    [end] el extremo libre «{ $name }»
    [start] el comienzo
   *[peg] { $name }
}
place-line = línea { $line }, columna { $column }
place-step = movimiento { $step }
place-peg = { $kind ->
    [hook] el gancho
    [end] el extremo libre «{ $name }»
    [start] el comienzo
   *[peg] clavija { $name }
}
place-band = gomita { $band }
place-whole = todo el patrón
place-at = dónde: { $place }
hint-is = consejo: { $hint }
fix-is = arreglo: { $label }
as-told = { $text }
band-named = { $band } ({ $colour })
the-band = gomita { $band } ({ $colour })
so-many-more = { $count } más

## Lo que una grabación dice de otro modo

said-otherwise = se dice «{ $heard }» y la lección dice «{ $meant }»: { $sentence }
said-never = el paso no se dice: { $sentence }
said-besides = se dice algo que no está en ningún paso: «{ $heard }»
said-too-late = el paso se dice después del paso { $later }
said-other-hand = el gancho está en la otra mano que en la lección: «{ $heard }»

## Leer

os-reason = { $errno ->
    [ENOENT] no existe
    [EACCES] no se permite leerlo
    [EISDIR] es una carpeta
   *[other] { $text }
}
write-reason = { $errno ->
    [ENOSPC] el disco está lleno
    [EACCES] ahí no se permite escribir
    [EROFS] está en un disco de solo lectura
    [ELOOP] en el lugar de una de sus carpetas hay un enlace
   *[other] { $text }
}
json-reason = { $kind ->
    [truncated] acaba demasiado pronto
    [trailing-characters] sigue algo después de su final
    [trailing-comma-in-object] hay una coma después del último campo
    [trailing-comma-in-array] hay una coma después del último elemento
    [object-keys-must-be-strings] el nombre de un campo va entre comillas dobles
    [invalid-character] hay un carácter fuera de lugar
    [invalid-number] hay un número mal escrito
    [number-out-of-range] hay un número demasiado grande
    [invalid-escape] a una barra invertida le sigue algo que no significa nada
    [expected] se espera { OR($signs) }
   *[other] { $text }
}
pattern-braces = un patrón es un objeto entre llaves
nested-deeply = hay demasiados paréntesis unos dentro de otros
line-between-levels = la línea no tiene la sangría de las líneas de encima ni está debajo de una de ellas
write-level = da la misma sangría a lo que va junto, y más a lo que pertenece a la línea de encima
quote-not-closed = un texto entre comillas no está cerrado
close-quote = pon " detrás; dentro, escribe \" para unas comillas
field-says-nothing = «{ $said }» no es un campo con su valor
write-field = escribe el nombre del campo, un espacio y el valor, y una coma antes del siguiente: pegs 2, rows 1
line-says-nothing = «{ $said }» no es un campo con su valor
write-line-field = escribe el nombre del campo, dos puntos y el valor, como en title: Ebb line
line-belongs-nowhere = la línea no pertenece a nada de lo que hay encima
pair-says-nothing = «{ $said }» no es un nombre con su valor
write-pair = escribe = entre los dos, como en A=14
line-no-move = «{ $said }» no es ningún paso
write-like = escríbelo así: { $example }
write-step = un paso empieza por { OR($choices) }
read-line = línea
read-words = texto
read-steps = pasos
read-loom = lazos en las clavijas
read-head = sobre la pieza
read-aside = –
read-unread = ?
read-times = { $n } veces:
read-more = … y { $n } más
read-holds = aguanta
read-falls = no aguanta
read-choose = pulsa Intro para «{ $first }», o escribe tu respuesta; - lo deja abierto
read-write = escribe tu respuesta; - lo deja abierto
read-no-answer = «{ $said }» no responde a esto
ask-loom = ¿en qué telar se hace? Quizá { $rows } × { $pegs } clavijas (filas × clavijas por fila)
ask-colour = { $count ->
    [one] ¿de qué color es la gomita de la línea { AND($lines) }?
   *[other] ¿de qué color son las gomitas de las líneas { AND($lines) }?
}
ask-turns = ¿cuántas vueltas da el remate de la línea { AND($lines) } en su clavija?
ask-chain-bands = ¿cuántas gomitas tiene la cadena de la línea { AND($lines) }?
ask-peg = ¿a qué clavija se refiere la línea { AND($lines) }?
ask-pegs = ¿a qué clavijas se refiere la línea { AND($lines) }?
ask-loop = ¿qué lazo se toma en la línea { AND($lines) }, el más bajo o el de arriba?
ask-times = ¿cuántas veces más se hace, en la línea { AND($lines) }?
ask-how-many-loops = ¿cuántos lazos se toman a la vez en la línea { AND($lines) }?
given-twice = el campo { $field } aparece dos veces
take-one-out = quita uno de los dos
no-such-field = aquí no hay ningún campo { $field }; puede haber { $known }
field-missing = falta el campo { $field }
see-schema = mira el esquema: pegwright schema
is-not = se espera { OR($types) }, no { $said }
a-text = un texto
true-or-false = true o false
a-whole-number = un número entero
a-number = un número
an-object = un objeto entre llaves
a-list = una lista entre corchetes
great-number = un número tan grande
quote-it = ponlo entre comillas dobles
write-true = escribe true o false, sin comillas
write-digits = escríbelo en cifras, sin comillas
write-braces = escríbelo como {"{"}"…": …{"}"}
write-brackets = escríbelo como […], también si hay una sola cosa
write-tag = escríbelo como {"{"}"{ $tag }": "{ $choice }", …{"}"}
is-no-address = { $said } no es la dirección de una clavija
write-address = da la fila en mayúsculas y luego el número contado desde ti, como en B3
is-no-end = { $said } no es nombre de un extremo
write-end = minúsculas, cifras y guiones, como en end o tail-1
is-no-holder = { $said } no es ni una clavija ni un extremo
write-holder = nombra una clavija, como B3, o un extremo, como start o end
is-no-letter = { $said } no es la letra de un color
write-letter = de una a seis letras o cifras, la primera una letra, como en A
is-no-mirror = { $said } no es un modo de reflejar
write-mirror = elige rows o pegs
is-no-language = { $said } no es un código de idioma
is-no-tint = { $said } no es un tono
write-language = escríbelo como en, de o pt-BR
write-tint = un # y seis de 0-9 y a-f: rojo, verde, azul, como en #34506b
shows-nothing = { $said } no muestra nada
write-visible = da al menos un carácter que se vea
write-visible-or-none = quítalo, o da un carácter que se vea
out-of-bounds = { $said } está fuera de los límites
take-at-least = pon como mínimo { SHORT($least) } y como máximo { SHORT($most) }
take-more-than = pon más de { SHORT($least) } y como máximo { SHORT($most) }
too-many = { FIXED($size) } { $what ->
    [characters] caracteres
   *[entries] elementos
} son demasiados
at-most = aquí caben como máximo { FIXED($most) }
too-few = { FIXED($size) } { $what ->
    [characters] caracteres
   *[entries] elementos
} son muy pocos
at-least = aquí hacen falta como mínimo { FIXED($least) }
no-choice = { $said } no se puede elegir
no-choice-for = { $said } no se puede elegir para { $field }
choices = hay { $choices }
choices-near = quizá { $near }; hay { $choices }
one-of = es uno de { $choices }
rubber-never-pulls = C10 y C01 son cero los dos: una gomita así no tiraría
rubber-pushes = C2 está demasiado por debajo de cero: una gomita así empujaría donde debe tirar
moved-before-row = { $peg }, movida aquí, quedaría antes de la fila A
moved-before-peg = { $peg }, movida aquí, quedaría antes de la clavija 1
moved-past-rows = { $peg }, movida aquí, quedaría después de la última fila que puede haber
span = { $first } a { $last }

## El telar y la prueba

open-twist = por lo que se sabe nada más sujeta, pero aquí hay gomitas torcidas sobre sí mismas, que podrían agarrarse
open-across = por lo que se sabe nada más sujeta, pero una gomita que pasa por encima y por debajo podría sujetar
open-tangled = está demasiado enredada para decidirlo
falls-unfastened = { $count ->
    [one] la gomita se cae
   *[other] se caen las { $count } gomitas
}: nada cierra la pieza: ata los últimos lazos, o ponles un cierre o una última gomita
falls-passed-by-none = { $count ->
    [one] la gomita { AND($named) } se cae: nada pasa por ninguno de sus lazos
   *[other] las gomitas { AND($named) } se caen: nada pasa por ninguno de sus lazos
}
falls-off = { $count ->
    [one] la gomita { AND($named) } se suelta por encima de
   *[other] las gomitas { AND($named) } se sueltan por encima de
} { $passing ->
    [one] la gomita { AND($over) }
   *[other] las gomitas { AND($over) }
}
falls-together = las gomitas { AND($named) } se caen: por sus lazos no pasan más que ellas mismas

## La lección

level-caps = remates
level-wide = gomitas anchas
level-twists = medias torsiones
level-hung = gomitas colgadas
level-tall = muchos lazos en una clavija
sight-everybody = todos los ojos
sight-protan = ojos que ven poco rojo
sight-deutan = ojos que ven poco verde
sight-tritan = ojos que ven poco azul
what-bands = gomitas en total
what-bands-of = gomitas de color { $letter }
what-key = colores de la leyenda
what-number = número de un paso
what-first = primer movimiento del paso { $step }
what-moves = movimientos enseñados
what-rounds = vueltas del paso { $step }
what-boxes = casillas del paso { $step }
what-strong = gomitas dibujadas con trazo grueso en el paso { $step }
what-size = tamaño de la pieza acabada
what-size-bands = gomitas para una muñeca de { $wrist }

## Tamaño, cuentas y medidas

stated-bands = gomitas { $letter } ({ $name })
stated-bands-unlisted = gomitas { $letter }
stated-clips = cierres
wrist-of-age = una edad de { SHORT($years) } años
girth-of-part = { $part ->
        [ankle] un tobillo
        [neck] un cuello
        [finger] un dedo
        [key] una llave
        [bottle] una botella
       *[wrist] una muñeca
    } de { $said }
wrist-of-girth = una muñeca de { $said }
pulls-with = {" "}y tira con { FIXED($force_n, digits: 1) } N
pulls-unknown = {""}
curve-few = hacen falta al menos dos puntos
curve-negative = una fuerza o un largo es negativo o no es un número
curve-falls = { SHORT($less_n) } N a { SHORT($less_mm) } mm, pero { SHORT($more_n) } N a { SHORT($more_mm) } mm
gauge-repeat = una repetición
gauge-extension = una gomita de extensión
few-for-rubber = el material
few-for-both = las dos constantes de Mooney-Rivlin
goods-bands = { $name } ({ $letter }), { $band }
goods-unlisted = color { $letter }
goods-loom = { $kind ->
    [straight] telar recto
    [round] telar redondo
   *[pegs] telar de clavijas sueltas
}, { $rows } × { $pegs }
goods = { $kind ->
    [clips] cierres
    [hooks] ganchos
   *[scissors] tijeras
}
measured = { $what ->
    [flat] un largo plano
    [thickness] un grosor
    [weight-100] un peso de cien
    [hook] un gancho
    [error] un error de lectura
    [weight] un peso
   *[length] un largo
}
measured-under = con { SHORT($mass_g) } g, un largo
between = debería estar entre { SHORT($low) } y { SHORT($high) }
above-nought = debería ser mayor que 0
no-hole = con un largo plano de { SHORT($flat_mm) } mm no quedaría nada del agujero
thin-wire = debería ser un alambre fino
error-useless = ninguna lectura carece de error, y una tan desviada no sirve
flat-already = tendida, la gomita ya mide { SHORT($flat_mm) } mm
all-snapped = eso es más de { SHORT($times) } veces, donde toda gomita se ha roto
longer-before = con { SHORT($mass_g) } g ya medía { SHORT($length_mm) } mm
cure = { $how ->
    [flat] tiende la gomita, apriétala y lee los mm de punta a punta
    [thickness] pon diez gomitas juntas, lee los mm a lo ancho y toma la décima parte
    [weight-100] cuenta cien gomitas en la balanza y lee los gramos
    [both] mide las dos cosas otra vez
    [hook] da su grosor en mm
    [error] da más o menos la mitad de la marca más fina
    [weight] pesa en gramos lo que cuelga debajo, con su gancho
    [length] lee los mm por fuera, de punta a punta
    [alike] mide igual el largo plano y el colgado: por fuera, de punta a punta
    [unit] mira la unidad: mm
   *[weights] mide otra vez los dos pesos
}

## Lo que el estudio no hace

no-pattern = esto no es un patrón
file-no-pattern = este archivo no contiene ningún patrón
file-no-stash = el archivo stash.json no contiene existencias
no-name-free = no queda ningún nombre libre para esta pieza
request-too-large = lo que envió la página pasa de { $limit_mb } MB, lo máximo para un patrón
folder-gone = la carpeta { $folder } ya no está; vuelve a ponerla o abre el estudio en otra
no-such-piece = aquí no hay tal pieza
no-such-work = no hay tal trabajo
too-much-under-way = ya hay demasiado en marcha
changed-elsewhere = esta pieza se cambió mientras tanto en otro sitio
overtaken = lo adelantó un trabajo más nuevo
piece-asks-too-much = esta pieza pide más tiempo o memoria de lo que el estudio da a una; hazla por partes
folder-read-only = no se puede escribir en la carpeta: { $reason }
wrong-inside = algo salió mal dentro de pegwright

## Arreglos

fix-cap = enrollar antes un remate en { $peg }
fix-turn = girar antes el telar
fix-upper-first = trabajar antes los lazos de arriba de { $peg }
fix-catch-all = sujetar todos los lazos
fix-clip = poner un cierre en los lazos de { $at }
fix-clip-both = unir los dos extremos con un cierre: { $at } y { $far }
fix-list-colour = poner el color { $letter } en la lista
fix-call-it = llamarlo { $letter }
fix-call-second = llamar { $letter } al segundo
fix-take-off = quitar { $letter } de la lista
fix-take-second = quitar el segundo de la lista
fix-use-kind = usar «{ $name }»
fix-write = escribir { $number }
fix-tint = cambiar { $letter } a { $tint }
mend-close = cierra la pieza: { $moves }
mend-change = en el movimiento { $step } haz esto en su lugar: { $move }
mend-put-in = { $step ->
    [0] empieza con: { $move }
   *[other] después del movimiento { $step } añade: { $move }
}
mend-take-out = omite el movimiento { $step }: { $move }
mend-swap = haz el movimiento { $second } antes que el { $first }
mend-through-all = en el movimiento { $step } sube por dentro de todos los lazos de { $peg }
mend-catch-all = que el cierre del movimiento { $step } sujete todos los lazos
mend-catch-also = que el cierre del movimiento { $step } recoja también { $peg }
mend-twist = pon cruzada la gomita del movimiento { $step }, con media torsión entre { $peg } y { $other }
mend-untwist = pon plana la gomita del movimiento { $step }, entre { $peg } y { $other }
mend-cap = enrolla un remate en { $peg } antes del movimiento { $step }
mend-both = { $first }; después { $second }
pinned-move = el movimiento { $step } ({ $move })
pinned-moves = los movimientos { $first } a { $last }
let-go = quita { $pinned }
lay-cap = enrolla un remate en { $peg } antes de trabajar
lay-band = pon una gomita sobre { $peg } y { $other } antes de trabajar

## Técnicas del atlas

technique-chain = { $bands ->
    [one] cadena sencilla
   *[other] cadena de { $bands } gomitas por eslabón
}
technique-strip = { $rows } cadenas unidas { $every ->
    [one] en cada clavija
   *[other] cada { $every } clavijas
}{ $bands ->
    [one] {""}
   *[other] , { $bands } gomitas por eslabón
}
technique-zigzag = zigzag sobre { $rows } filas{ $bands ->
    [one] {""}
   *[other] , { $bands } gomitas por eslabón
}
technique-lozenge-open = fila de rombos abiertos
technique-lozenge-capped = fila de rombos rellenos con tope
technique-tail = cola en { $pegs } clavijas, levantada por encima de { $over ->
    [one] una gomita
   *[other] { $over } gomitas
}{ $bands ->
    [one] {""}
   *[other] , de { $bands } en { $bands }
}
technique-tube = tubo en { $pegs } clavijas{ $bands ->
    [one] {""}
   *[other] , { $bands } gomitas juntas
}
technique-mat = tapete plano de { $across } gomitas de ancho{ $bands ->
    [one] {""}
   *[other] , { $bands } gomitas juntas
}
technique-hung = cadena con gomitas colgadas de { $turns } vueltas, una cada { $every } eslabones
technique-points = cadena con puntas, una cada { $every } eslabones
technique-fork = tallo que se abre en { $arms } brazos
technique-ring = anillo cerrado, cadena de { $bands ->
    [one] 1 gomita
   *[other] { $bands } gomitas
} por eslabón
technique-joined = { $chains } cadenas unidas en los dos extremos
technique-fringe = cadena con flecos, uno cada { $every } eslabones
technique-failed = la técnica { $name } no se pudo medir: { $why }
no-such-technique = no hay técnica llamada { $name }

## Una imagen se vuelve tapete

picture-empty = el archivo está vacío
picture-unknown-kind = no es de ninguna de las clases conocidas, que son { $known }
picture-damaged = el archivo está dañado o incompleto
colours-unreadable = «{ $part }» no es un color; escribe su nombre y su tono, como slate=#4a5a6a, separados por comas
colours-twice = el color { $name } se da dos veces
no-colours-told = no hay colores con que hacer el tapete: da --colours, o unas existencias que digan los tonos de sus gomitas
mat-size = no se puede hacer un tapete de { $across } gomitas de ancho y { $down } hileras: tiene de 2 a { $widest } de ancho, al menos 2 hileras y como mucho { $most } gomitas en total
mat-pegs = un telar para un tapete tiene de 3 a 1.000 clavijas en fila, no { $pegs }
most-colours = un tapete tiene de 1 a 40 colores, no { $most }
crop-impossible = el recorte está vacío o se sale de la imagen; da izquierda, arriba, derecha y abajo como partes de 0 a 1
stash-few-colours = la pieza necesita { $needed } colores entre los que elegir; hay { $have }
band-size-unreadable = «{ $text }» no es una medida de gomita; escribe diámetro x grosor en mm, como 15x1.8
loom-size-unreadable = «{ $text }» no es una medida de telar; escribe filas x clavijas, como 3x26, con 10.000 clavijas como mucho
loom-not-straight = esta pieza se trabaja en un telar sin filas rectas, así que ningún otro telar recto le sirve
no-other-size = esta pieza no tiene repeticiones ni extremo libre, o no se cierra alrededor de una muñeca, así que no hay otras tallas
variant-refused = uno de sus pasos no se puede hacer ahí
variant-falls = no todas las gomitas quedarían sujetas
variant-name = { $parts }
variant-size = talla { $size }
variant-loom = en un telar de { $rows } × { $pegs } clavijas
variant-bands = de gomitas de { $bore_mm } × { $thickness_mm } mm
variant-colours = colores { $number }
variant-left = para la mano izquierda
batch-no-workers = los procesos de trabajo terminan nada más empezar; no se puede hacer nada
batch-lost = terminó todos los procesos que trabajaban en ello
batch-no-scheduler = en { $address } no responde ningún planificador
batch-too-large = { $count } cosas son demasiadas para una tanda; se hacen como mucho { $most }
mat-about = un tapete hecho de una imagen, hilera sobre hilera; visto de frente, la primera hilera es el borde de arriba y la clavija A1 queda a su izquierda
mat-row = hilera { $row } del tapete
mat-rows = hileras { $first } a { $last } del tapete
mat-end = pasa un cordón por todos los lazos, saca el tapete de las clavijas y anuda el cordón sin fruncir el borde

## Lo que se rechaza

no-demo-piece = no hay ninguna pieza llamada { $name }; las hay con estos nombres: { $known }
leads-out-of-folder = { $path } lleva fuera de { $folder }; allí no se escribió nada
worn-needs-girth = una pieza puesta necesita el contorno de una muñeca, por ejemplo 16 cm
tension-form = el mapa de tensión se pinta como png o svg
picture-width = una imagen de esta forma mide de 100 a { $widest_px } píxeles de ancho, no { $width_px }
no-such-colour = el patrón no tiene ningún color { $letter }
no-photo-renderer = las imágenes que parecen fotos necesitan el motor: pip install 'pegwright[photo]'
starter-size = una cadena necesita de 3 a 10.000 clavijas, y un telar tiene de 1 a 700 filas
starter-pegs = un telar de { FIXED($count) } clavijas es demasiado grande: { FIXED($limit) } en total como máximo
starter-title = un título tiene de 1 a 200 caracteres visibles; dalo con --title
timing-unreadable = { $text } no es un tiempo; escribe outline=42 o 1-8=60
timing-impossible = no es un tiempo: movimientos { $first } a { $last } de { $moves } en { $seconds } s
motif-never-worked = el motivo { $name } no se trabaja nunca
narration-pace = { $wpm } palabras por minuto; para trabajar a la vez se dicen de 110 a 130
no-bands = no hay gomitas, así que no hay nada que llevar al reposo
not-a-tint = { $tint } no es un color; escribe #rrggbb
class-size = participantes desde 1, parte de reserva de 0 a 10; no { $learners } y { $spare_share }
beyond-the-loom = { HOLDER($peg) } queda fuera del telar; arregla el patrón antes de reflejarlo
repeats-impossible = de esta pieza no se puede hacer una de { $repeats } repeticiones
film-height = un vídeo mide un número par de píxeles de alto, de 180 a 2160, no { $tall_px }
no-piper = piper no está instalado; prescinde de la voz o instálalo
no-film-encoder = los vídeos necesitan la extensión «film», que no está instalada: pip install 'pegwright[film]'; su codificador lleva partes bajo la GPL
no-voice-in = no hay ninguna voz en { $file }; prescinde de la voz o instala una
voice-failed = la voz { $program } falló: { $told }
voice-silent = la voz no dio sonido: { $reason }
voice-bits = la voz dio sonido de { $bits } bits; se esperaban 16
does-not-close = ningún cierre une dos extremos de esta pieza: no se cierra alrededor de una muñeca
slid-in-part = solo se deslizaron algunos lazos de la gomita { $band }, y una así aún no se puede dibujar
no-way-between-pegs = las clavijas no dejan paso entre ellas, así que la pieza no se puede dibujar
no-way-through-column = a una misma altura se cruzan tantos lazos que la pieza no se puede dibujar
pegs-coincide = dos clavijas están en un mismo lugar, así que la pieza no se puede dibujar
wire-or-reading = el alambre y el error de lectura son mm, más de 0 y menos de 100
no-weight-and-length = { $text } no es un peso con su longitud; escribe GRAMOS=MM, por ejemplo 100=29.8
no-such-part = ninguna parte se llama { $name }; las hay con estos nombres: { $known }
cannot-read = no se puede leer { $file }: { $reason }
no-words-to-exchange = { $file } no contiene palabras para cambiar: { $reason }
names-no-colour = { $text } no nombra ningún color; escribe A=#204060
no-such-trouble = hay { $count } puntos difíciles, así que ninguno con el número { $number }
trouble-not-seen = el punto difícil { $number } no se ve ni en el telar ni en la pieza
