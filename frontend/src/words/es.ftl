shelf = Estante
begin = Coloca una primera pieza
begin-more = Elige una y cámbiala como quieras. Nada sale de este ordenador.
your-pieces = Tus piezas
search = Buscar
none-found = No hay ninguna pieza con ese nombre.
bands = { $count ->
    [0] todavía sin gomitas
    [one] 1 gomita
   *[other] { $count } gomitas
}
unreadable = no se puede leer
empty-loom = Un telar vacío
undo = Deshacer
redo = Rehacer
saved = Guardado
saving = Guardando…
not-saved = Sin guardar: el estudio no responde
not-saved-because = Sin guardar: { $reason }
changed-elsewhere = Esta pieza se cambió en otra ventana.
take-theirs = Mostrar la otra
keep-mine = Guardar la mía como copia
title = Nombre de la pieza
press = Imprimir la lección
pressing = Componiendo…
pressed = La lección está lista
versions = Versiones
keep-version = Guardar esta versión
kept = guardada { $when }
go-back-to = Volver a ella
copy = Duplicar
copy-of = { $title } (copia)
download = Guardar el documento
open-file = Abrir un documento
read-words = Leer tus propias palabras
read-words-more = Pega un patrón tal como lo escribiste, o arrastra aquí un archivo que lo contenga.
words-here = El patrón con tus propias palabras
words-example = Un telar de 1 fila y 12 clavijas. Estira una gomita roja de A1 a A2. …
read-it = Leer
accept-piece = Abrir la pieza
questions-left = { $count ->
    [one] Queda una pregunta.
   *[other] Quedan { $count } preguntas.
  }
words-hold = Todo está leído y todas las gomitas quedan sujetas.
words-do-not-hold = Todo está leído, pero no todas las gomitas quedan sujetas. Abre la pieza para ver por qué.
take-answer-back = Retirar la última respuesta
take-answer = Esa
another-answer = otra
top-loop = el de arriba
lowest-loop = el más bajo
the-words = Tus palabras
the-loom = El telar
not-understood = no se ha entendido
about-piece = sobre la pieza

# Repasar una grabación
listen-back = Repasar la grabación
listen-back-short = ¿Dice tu grabación lo que dice el patrón? Suelta aquí sus subtítulos.
listen-back-what = Suelta aquí los subtítulos de una grabación de esta clase y, si quieres oírla aquí, también el sonido o el vídeo. Verás qué dice de otro modo, cuándo empieza cada capítulo y qué palabras de los subtítulos se oyeron mal. Nada sale de este equipo.
captions-how = Los subtítulos son un archivo con tiempos: WebVTT, SRT o líneas que empiezan con un tiempo, como [1:05]. Los puede escribir un sitio de vídeos, un programa de reuniones o un móvil; busca allí «subtítulos» o «transcripción» y guárdalos.
choose-captions = Subtítulos…
choose-sound = Sonido o vídeo…
language-heard = Se habla en
no-recording = { $file } no son subtítulos ni una grabación.
captions-too-long = { $file } es demasiado largo para leerlo como subtítulos. Divídelo.
sound-not-played = Este navegador no puede reproducir { $file }. Sus subtítulos se leen igualmente.
listening = Escuchando…
listen-again = Escuchar otra vez
heard-before = La pieza ha cambiado desde que se escuchó esto.
heard-all = { $chapters ->
    [one] Se oye un capítulo
   *[other] Se oyen { $chapters } capítulos
  }. { $otherwise ->
    [0] Nada se dice de otro modo con seguridad
    [one] Una cosa se dice de otro modo
   *[other] { $otherwise } cosas se dicen de otro modo
  }; { $questions ->
    [0] ninguna pregunta
    [one] una pregunta
   *[other] { $questions } preguntas
  }.
line-of = Línea { $line }:
timeline = La grabación de principio a fin
place-in-recording = Lugar en la grabación
go-to-time = Ir a { $time }
said-otherwise = Lo que la grabación dice de otro modo
heard-otherwise = de otro modo
heard-question = una pregunta
how-sure = { $share } seguro
nothing-otherwise = Nada. Lo que se pudo oír es como lo dice la clase.
mended-captions = Subtítulos corregidos
take-all = Aceptar todo
refuse-all = Rechazar todo
take-mend = Aceptar «{ $after }» por «{ $before }»
nothing-mended = No hubo que corregir ninguna palabra.
chapters = Capítulos
words-heard = { $share } de sus palabras oídas
could-be-cut = Lo que se podría cortar
trim-silence = silencio
trim-aside = un comentario aparte
trim-again = empezado y dicho de nuevo
pace-heard = { $count ->
    [one] Se oyó cuánto tardaste en mostrar un paso.
   *[other] Se oyó cuánto tardaste en mostrar { $count } pasos.
  } Los minutos y el horario de la clase pueden seguirlo.
keep-pace = Guardar mi ritmo
pace-kept = Tu ritmo queda guardado con la pieza; la clase lo sigue.
edit-pace = Guardar el ritmo
take-along = Para llevar
draft-of = Borrador de { $file }
draft-steps = { $steps ->
    [one] Se lee un paso
   *[other] Se leen { $steps } pasos
  } de { $sentences ->
    [one] una frase
   *[other] { $sentences } frases
  }.
draft-what = Solo se lee lo que se dice con claridad. Las demás frases las escribes tú junto a sus tiempos: nada se adivina.
draft-open = { $count ->
    [one] Queda una cosa abierta en la pieza
   *[other] Quedan { $count } cosas abiertas en la pieza
  }
left-to-you = te toca a ti
open-recording = Abrir los subtítulos de una grabación
save-sentences = Guardar las frases con sus tiempos
sentences = frases

close = Cerrar
language = Idioma
left-handed = Para zurdos
tools = Herramientas
tool-point = Señalar
tool-lay = Colocar
tool-hook = Enganchar
tool-lift = Pasar por encima
tool-transfer = Trasladar
tool-slide = Deslizar
tool-bind = Última gomita
tool-clip = Cierre
tool-knot = Nudo
tool-snap = Romper
do-turn = Girar
do-hang = Al gancho
do-again = Una vez más
do-to-end = Seguir hasta el final
tip-point = Pulsa una gomita o una clavija para verla de lado.
tip-lay = Ve de clavija en clavija. Dos veces la misma pone un remate.
tip-lay-more = Desde { $pegs }: la siguiente clavija, o Intro.
tip-hook = Pulsa la clavija del lazo y luego aquella a la que va.
tip-hook-to = Lazo { $loop } de { $peg }: ¿a qué clavija va?
tip-lift = Pulsa la clavija: su lazo más bajo pasa sobre los demás y sale. Arrastrado a otra clavija, queda en ella.
tip-lift-on = Lazo { $loop } de { $peg }: ¿en qué clavija queda? La misma otra vez: sale.
tip-transfer = Pulsa la clavija del lazo y luego aquella a la que va.
tip-transfer-end = Pulsa la clavija del lazo, o el extremo suelto, y luego la clavija a la que va.
tip-put = Pulsa la clavija en la que va el extremo suelto; con Mayús, varias.
tip-put-more = El extremo suelto en { $pegs }: la siguiente clavija, o Listo.
tip-slide = Cuelga primero gomitas en el gancho; luego pulsa las dos clavijas.
tip-bind = Pulsa la clavija por cuyos lazos pasa la última gomita; con Mayús, solo por algunos.
tip-bind-some = Pulsa el lazo más bajo por el que pasa la última gomita.
tip-clip = Pulsa la clavija cuyos lazos se cierran.
tip-knot = Pulsa la clavija cuyos lazos se atan.
tip-snap = Pulsa una gomita: ¿qué cae si se rompe?
turns = Vueltas en cada clavija
twist = Media torsión
several-pegs = Varias clavijas
on-another-peg = En otra clavija
some-loops = Solo algunos lazos
done = Listo
stash = Gomitas
add-colour = Nuevo color
colour-name = Nombre
colour-letter = Letra
colour-tint = Tono
change = Cambiar
add = Añadir
loom = Telar
change-loom = Cambiar el telar
rows = Filas
pegs = Clavijas por fila
pitch = Paso, mm
row-gap = Entre filas, mm
shift = Una fila de cada dos desplazada la mitad
channel = La ranura se abre
channel-far = hacia fuera
channel-near = hacia ti
channel-left = a la izquierda
channel-right = a la derecha
larger = Más grande
smaller = Más pequeño
whole = Entero
across = De lado
you = tú
steps = Pasos
phase-place = Colocar
phase-turn = Girar
phase-work = Trabajar
phase-finish = Terminar
first = Al principio
back = Un paso atrás
on = Un paso adelante
last = Al final
step-of = Paso { $step } de { $of }
no-steps = Todavía no hay nada.
holds = Las { $count } gomitas están sujetas.
holds-none = Todavía no hay nada.
falls = { $count ->
    [one] 1 de { $of } gomitas se cae.
   *[other] { $count } de { $of } gomitas se caen.
}
unproved = { $count ->
    [one] 1 gomita no está probada ni en un sentido ni en otro.
   *[other] { $count } gomitas no están probadas ni en un sentido ni en otro.
}
working = Mirando…
findings = Lo que se encontró
no-findings = Nada que objetar.
mend = Arreglar: { $label }
severity-error = fallo
severity-warning = mira
severity-note = nota
needs = Lo que hace falta
clips = { $count ->
    [one] 1 cierre
   *[other] { $count } cierres
}
snap-falls = Si se rompe la gomita { $band }, { $count ->
    [0] no cae nada más
    [one] cae una más
   *[other] caen { $count } más
}.
snap-free = La gomita { $band } de todos modos no está sujeta.
stack-of = Clavija { $peg }
stack-at = Pila de {$peg}
stack-bare = Sin lazos.
loop-name = Lazo { $loop } { $letter }: { $colour }, gomita { $band }
take-loop = Tomarlo
bind-from-here = La última gomita pasa por este y los de encima
band-of = Gomita { $band }
delete = Quitarla
move-band = Moverla
copy-band = Otra igual
only-this = Solo esta
all-of-repeat = Las { $count } de la repetición
peg-name = Clavija { $peg }, { $count ->
    [0] vacía
    [one] 1 lazo
   *[other] { $count } lazos
}
moved-off-rows = Eso llevaría fuera del telar.
no-way-on = No hay adónde seguir.
edit-lay = Colocar una gomita
edit-move = { $what }
edit-colour = Cambiar un color
edit-recolour = Cambiar el color de una gomita
edit-delete = Quitar un paso
edit-loom = Cambiar el telar
edit-title = Cambiar el nombre
edit-version = Volver a una versión
no-difference = Ninguna diferencia.
differs-title = Se llamaba «{ $old }»; ahora, «{ $now }».
differs-loom = Otro telar.
differs-more = { $count ->
    [one] una gomita más en { $letter }
   *[other] { $count } gomitas más en { $letter }
}
differs-fewer = { $count ->
    [one] una gomita menos en { $letter }
   *[other] { $count } gomitas menos en { $letter }
}
differs-new = { $count ->
    [one] paso { $from } nuevo
   *[other] pasos { $from } a { $to } nuevos
}
differs-gone = { $count ->
    [one] paso { $from } quitado
   *[other] pasos { $from } a { $to } quitados
}
differs-changed = { $count ->
    [one] paso { $from } cambiado
   *[other] pasos { $from } a { $to } cambiados
}
differs-colours = Cambiaron los colores.
not-closed = Todavía nada la cierra. { $count ->
    [one] Hay 1 gomita.
   *[other] Hay { $count } gomitas.
}
more-like-it = { $count } más como esta
recolour = Color
take-step-out = Quitar este paso
motifs = Motivos
tip-motif = Pulsa la clavija donde empieza { $name }.
tip-move = Pulsa la clavija a la que va la primera.
tip-copy = Pulsa la clavija a la que va la primera de la copia.
tip-marks = Mayúsculas marca varios pasos.
with-run = { $count ->
    [one] Con este paso …
   *[other] Con estos { $count } pasos …
}
colours-in-turn = Colores por turno, vuelta a vuelta
times = Veces en total
on-by-rows = Avanza cada vez, en filas
on-by-pegs = Avanza cada vez, en clavijas
repeat = Repetir
mirror-sides = Reflejar izquierda y derecha
mirror-ends = Reflejar cerca y lejos
half-round = Girar media vuelta
motif-name = Nombre del motivo
make-motif = Hacer un motivo
take-run-out = Quitarlos
unmark = Quitar las marcas
with-steps = Con los pasos marcados, o con todos
mark-steps = Marcar pasos
edit-repeat = Repetir pasos
edit-mirror = Reflejar pasos
edit-rotate = Girar pasos media vuelta
edit-copy = Copiar una gomita
edit-move-band = Mover una gomita
edit-motif = Hacer un motivo
refused = Sin guardar: mira lo que se encontró
lesson = La lección
lesson-preview = La lección tal como se lee
hand = Se trabaja con la
hand-right = mano derecha
hand-left = mano izquierda
units = Medidas en
paper = Papel
edition = Hoja
edition-standard = normal
edition-large = letra grande, 18 puntos
edition-giant = letra grande, 24 puntos
edition-grey = negro sobre blanco
learners = Aprendices
press-holds = Se imprime cuando todas las gomas estén sujetas.
stop = Parar
download-zip = Descargar todo
job-failed = Algo salió mal. Inténtalo otra vez.
finished = Fuera del telar
finished-size = { $length } × { $width } cm
finished-keys = Las flechas la giran, más y menos la acercan, 0 muestra el frente.
finished-empty = Cuando un cierre o un nudo la cierre, aquí se verá la pieza terminada.
finished-open = Aún no la cierra nada.
finished-waiting = Ha cambiado.
settle-now = Sacar del telar
settling = Asentándose…
see-large = Ver de cerca
beside-loom = Volver al telar
once-more = Otra vez
no-3d = Este navegador no puede dibujar en tres dimensiones.
turn-left = Girar a la izquierda
turn-right = Girar a la derecha
turn-up = Girar hacia atrás
turn-down = Girar hacia ti
front = De frente
worn = En la muñeca
tension = Tensión
other-colours = Otros colores
keep-colours = Quedarse con estos
edit-colourway = Cambiar los colores
band-reading = Goma { $band }, { $letter } { $name }: { $tension } N
fit = Ajuste
wrist = Muñeca
wrist-hint = Una muñeca: 16 cm, M, 8 años. U otro contorno: tobillo 22 cm, cuello 34 cm, anillo 54, botella 25 cm.
measuring = Midiendo…
measure = Medir cómo se estira
fits = Va bien a { $part ->
    [ankle] tobillos
    [neck] cuellos
    [finger] dedos
    [key] llaves
    [bottle] botellas
   *[wrist] muñecas
 } de { $low } a { $high }:
fits-nobody = Así no va bien a { $part ->
    [ankle] ningún tobillo
    [neck] ningún cuello
    [finger] ningún dedo
    [key] ninguna llave
    [bottle] ninguna botella
   *[wrist] ninguna muñeca
 }:
feel-loose = suelta en esta
feel-easy = cómoda en esta
feel-snug = ceñida en esta
feel-tight = apretada en esta
trying-lengths = Probando otros largos…
one-repeat = Una repetición lleva { $count ->
    [one] 1 gomita
   *[other] { $count } gomitas
}, { $length }.
repeats-more = { $count ->
    [one] una repetición más
   *[other] { $count } repeticiones más
} ({ $all } en total)
repeats-fewer = { $count ->
    [one] una repetición menos
   *[other] { $count } repeticiones menos
} ({ $all } en total)
extension-bands = { $count ->
    [0] sin gomitas de extensión
    [one] 1 gomita de extensión
   *[other] { $count } gomitas de extensión
}
mend-fit = Ajustarla: { $what }, { $length }
mend-nearest = Más cerca no llega que: { $what }, { $length }
wearing = Cerrándola en la muñeca…
worn-bent = Dibujada doblada alrededor de la muñeca, sin asentarse en ella.
worn-closed = Cerrada en la muñeca y asentada en ella.
edit-fit = Hacer que ajuste a { $wrist }
care = Lo que aprieta no es para dormir ni para niños pequeños. Sigue las normas de tu lugar.

# The rehearsal
rehearsal = Dónde falla la gente
rehearsal-what = Se prueba cada error probable en cada paso, para ver dónde se equivoca la gente.
rehearse = Ensayar
rehearsing = Probando errores…
rehearsed = { $count ->
    [one] Se probó un error. Las barras junto a los pasos muestran dónde cuesta más.
   *[other] Se probaron { $count } errores. Las barras junto a los pasos muestran dónde cuestan más.
  }
rehearsed-none = Ningún error daña esta pieza.
slip-steps = { $count ->
    [one] Paso { $first }:
   *[other] { $count } pasos, del { $first } al { $last }:
  }
slip-guess = sin demostrar
slip-right = Bien
slip-wrong = Mal
slip-show = Ver el paso { $step }
slip-end = Ver cómo acaba
slip-falls = { $count ->
    [0] No se cae ninguna gomita.
    [one] La gomita que se cae está marcada.
   *[other] Las { $count } gomitas que se caen están marcadas.
  }
slip-back = Cómo arreglarlo
look-after = Para y mira después del paso { $steps }: así se descubre la mayoría.
often-wrong = falla a menudo

# The library of motifs, and the stash
motif-of = de { $title }
no-motifs-found = Ningún motivo con ese nombre.
motifs-more = Empieza con uno, o tráelo a una pieza.
from-shelf = Del estante
edit-bring = Traer el motivo { $name }
at-hand = Tienes
from-stash = De tus gomitas
stash-short = faltan { $count }
stash-has = tienes { $count }
take-away = Quitarla del estante
taken-away = «{ $title }» ya no está en el estante.
put-back = Devolverla

# Kinds of loom
loom-rows = recto
loom-joined = varios rectos unidos
loom-round = redondo
loom-pegs = cada clavija en su sitio
looms = Telares unidos
joined-how = Unidos
joined-beside = lado a lado
joined-beyond = uno tras otro
pegs-of-ring = Clavijas de un anillo
rings = Anillos
diameter = Diámetro, mm
channel-out = hacia fuera
channel-in = hacia dentro

# Una imagen se vuelve tapete
mat = Tapete
mat-of-picture = Hacer un tapete de una imagen
mat-of-picture-more = Elige una foto o un dibujo, o suéltalo en cualquier lugar de aquí.
picture-to-mat = Un tapete de tu imagen
picture-too-large = «{ $file }» es demasiado grande para verla aquí.
picture-unreadable = «{ $file }» no se puede leer.
your-picture = Tu imagen
crop = Qué parte
crop-left = Desde la izquierda
crop-right = hasta la derecha
crop-top = Desde arriba
crop-bottom = hasta abajo
crop-whole = Toda la imagen
mat-choices = Lo que eliges
mat-size = Tamaño
mat-across = Gomitas a lo ancho
band-bore = Ancho interior de una gomita, mm
band-thickness = Grosor de una gomita, mm
mat-colours = Colores
mat-most = Colores como máximo
mat-takes = { $count ->
    [one] lleva 1
   *[other] lleva { $count }
}
mat-look = Así quedará
mat-about = { $across } gomitas a lo ancho, { $rows } filas, { $bands } gomitas en total; unos { $width } × { $height } cm.
mat-looms = Lleva { $pegs } clavijas en una fila{ $count ->
    [one] .
   *[other] : { $count } telares unidos a lo largo.
}
mat-shades = Tonos
mat-areas = Zonas claras
mat-mixed = Mezclados con puntos
mat-front = La primera fila que trabajas es la parte de arriba de la imagen; la primera clavija, su lado izquierdo.
mat-no-colours = Elige al menos un color.
mat-make = Hacer el tapete
mat-making = Se trabaja y se prueba el tapete
tint-tar-black = negro alquitrán
tint-stone-grey = gris piedra

# La colección de técnicas
techniques = Técnicas
techniques-more = Elige una por sus números: medida en reposo y ensayada. Empiezas con unos 15 cm, probados.
techniques-lay = Pon una como motivo: las gomitas como se colocan, hasta que se gira el telar o se cierra la pieza.
techniques-found = { $count ->
    [0] Ninguna técnica es así.
    [one] Una técnica.
   *[other] { $count } técnicas.
}
technique-width = Ancho, cm
technique-least = Ancho desde, cm
technique-most = Ancho hasta, cm
technique-colours = Colores
technique-time = Tiempo
technique-level = Como mucho
technique-any = cualquiera
technique-all = Mostrar todas
technique-minutes = { $minutes } min
technique-size = { $width } cm de ancho, { $height } cm de alto.
technique-bracelet = 15 cm: { $bands } gomitas, unos { $minutes } min para quien empieza.
technique-swatch = Muestra: { $bands } gomitas, unos { $minutes } min para quien empieza.
technique-wrists = Sirve para muñecas de { $low } a { $high } cm.
technique-more = Más números
technique-repeat = Una repetición
technique-repeat-bands = Gomitas por repetición
technique-stretch = Largo al tirar con 1 N
technique-stack = Más lazos en una clavija
technique-strain = Mayor estiramiento en el telar
technique-snap = Otras gomitas que caen si se rompe una
technique-begin = Empezar una pieza
technique-lay = Ponerla
technique-other-loom = Se trabaja en otra clase de telar.

# Variantes
variants = Variantes
variants-what = La misma pieza en otros tamaños y colores, para la otra mano, en otro telar: cada una trabajada y probada de nuevo.
variants-sizes = Tamaños
variants-own-sizes = Otros tamaños o medidas, como «16 cm, edad 8»
variants-colourways = Combinaciones de color
variants-how-many = Cuántas se muestran
variants-stash = De los { $count } colores de tu reserva.
variants-own-colours = Tu reserva tiene todavía muy pocos colores, así que se suman los del estudio.
variants-others = Mostrar otras
variants-left = También para la mano izquierda
variants-loom = En otro telar
variants-bands = Con otras gomitas
variants-make = Hacerlas
variants-making = Se trabajan y se prueban las variantes
variants-picturing = Se llevan al reposo para sus imágenes
variants-made = { $count ->
    [0] Ninguna se sostiene.
    [one] Una variante, probado que se sostiene.
   *[other] { $count } variantes, probado que todas se sostienen.
}
variant-same = Como está
variant-size = tamaño { $size }
variant-long = { $length } cm en reposo
variant-left = mano izquierda
variant-loom = otro telar
variant-bands = otras gomitas
variant-apart = distancia de los dos colores más parecidos: { $apart }
variant-uses = lleva el { $share } % de lo que tienes
variant-buy = lleva más de lo que tienes
variant-take = Tomarla aquí
variant-new = Pieza nueva
variant-on-shelf = «{ $title }» está en el estante.
variant-open = Abrirla
edit-variant = Tomar una variante

# Problemas con el estudio
locked = Aún sin guardar: el estudio se ha vuelto a iniciar. Abre la dirección que muestra; esta página seguirá sola.
not-saved-changed = Sin guardar
no-answer = El estudio no responde.
no-document = «{ $file }» no es un patrón del estudio.
unsaved-edits = «{ $title }» tiene cambios sin guardar.
recover = Seguir con ellos
discard = Descartarlos
recovered = Se han recuperado los cambios que no se guardaron la última vez.
undo-recovered = Quitarlos
keep-recovered = Conservarlos
edit-recovered = Recuperar cambios sin guardar

# Paneles, teclas
panels = Paneles
panel-found = Hallado
panel-bands = Gomitas
panel-steps = Pasos
panel-piece = Pieza
panel-menu = Más
letters = Letras
help = Teclas
help-arrows = de clavija a clavija
help-enter = pulsar la clavija; terminar lo empezado
help-more = una clavija más
help-escape = dejarlo
help-steps = un paso atrás, un paso adelante
help-stack = la pila de la clavija
help-save = guardar ahora

# Los pasos, como se dicen
say-place = Coloca { $colour } sobre { $pegs }{ $twisted ->
    [yes] , con media torsión
   *[no] {""}
}
say-wind = Enrolla { $colour } { $turns } veces en { $peg }
say-hook = Lleva { $loop ->
    [1] el lazo más bajo
    [-1] el lazo de arriba
   *[other] { $top ->
        [0] el lazo { $loop }
       *[other] el lazo { $top } desde arriba
    }
} de { $from } a { $to }
say-slide = Pasa lo que cuelga del gancho a { $loop ->
    [1] el lazo más bajo
    [-1] el lazo de arriba
   *[other] { $top ->
        [0] el lazo { $loop }
       *[other] el lazo { $top } desde arriba
    }
} de { $from }, y llévalo a { $to }
say-transfer = Pasa { $count ->
    [one] el lazo de arriba
   *[other] los { $count } lazos de arriba
} de { $from } a { $to }
say-lift = Levanta { $loop ->
    [1] el lazo más bajo
    [-1] el lazo de arriba
   *[other] { $top ->
        [0] el lazo { $loop }
       *[other] el lazo { $top } desde arriba
    }
} de { $peg } por encima de los demás y sácalo
say-lift-on = Levanta { $loop ->
    [1] el lazo más bajo
    [-1] el lazo de arriba
   *[other] { $top ->
        [0] el lazo { $loop }
       *[other] el lazo { $top } desde arriba
    }
} de { $peg } por encima de los demás y ponlo en { $to }
say-put = Pon el extremo libre en { $pegs }
say-bind = Pasa la última gomita, { $colour }, por los lazos de { $peg }
say-only-top = { $said }, solo { $count ->
    [one] el de arriba
   *[other] los { $count } de arriba
}
say-through = { $said }, por dentro de { $count ->
    [0] ninguno
    [one] solo el de arriba
   *[other] solo los { $count } de arriba
} de los lazos de encima
say-together = { $said }, { $count } juntos
say-extend = Añade una extensión de { $count } gomitas en { $colour }
say-hang = Cuelga { $colour } del gancho
say-clip = Cierra los lazos de { $pegs }
say-knot = Ata los lazos de { $pegs }
say-turn = Gira el telar
the-free-end = el extremo libre
the-hook = el gancho
and = { $first } y { $last }
impossible-step = El paso { $step } no se puede hacer.
job-ended = Se detuvo antes de terminar.
falls-apart = Se deshace: caen { $count } de { $of } gomitas.
what-is-left = Esto es lo que queda.
nothing-left = No queda nada que dibujar.

# Cerrar
loose-end = Extremo suelto
tip-end = Pulsa ahora la clavija del otro extremo con la que se cierra.
do-extend = Extensión
extension-count = Gomitas de extensión

# Bands chosen together, copied, chained
tip-usual = Otra vez { $peg }: a { $usual }.
tip-chain = Recorre las clavijas: una gomita de cada una a la siguiente.
tip-paste = Pulsa la clavija donde va la primera clavija de la copia.
edit-paste = Colocar lo copiado
through = Por dentro de los lazos de encima:
through-all = { $count ->
    [one] el único
   *[other] los { $count }
}
through-some = { $count ->
    [0] ninguno
    [one] solo el de arriba
   *[other] solo los { $count } de arriba
}
bands-chosen = { $count ->
    [one] 1 gomita elegida
   *[other] { $count } gomitas elegidas
}
all-of-motif = Todas las { $letter } de este motivo
all-of-colour = Todas las { $letter } de esta repetición
copy-chosen = Copiar lo elegido
delete-chosen = Quitar lo elegido
paste = Colocar lo copiado
recolour-run = { $colour } pasa a ser
several-bands = Varias gomitas
chain = Cadena
cap-turns = Vueltas de un remate

# Notes on a step, steps moved
add-note = Añadir una nota
change-note = Cambiar la nota
notes-of = Paso { $step }: lo que lleva escrito
note = Nota
warning = Aviso
write = Anotar
edit-note = Anotar en un paso
edit-move-steps = Mover pasos
help-ends = a la primera o la última clavija de la fila
help-shift = pasar un paso antes o después

# Commands
find = Buscar
find-command = Buscar una orden
no-command = Ninguna orden se llama así.
take-colour = Colocar con { $colour }
take-motif = Colocar el motivo { $name }

# The tour
tour = El recorrido
tour-of = { $step } de { $of }:
tour-leave = Dejar el recorrido
tour-1 = arrastra de una clavija a la siguiente y una gomita queda sobre las dos.
tour-2 = pulsa «Seguir hasta el final» y sigue por toda la fila.
tour-3 = toma «Enganchar» y pulsa una clavija con dos lazos, luego la anterior: el lazo de abajo va allí. O pon antes todas las gomitas y pulsa «Buscar un orden».
tour-4 = cierra la pieza con «Cierre» o «Nudo», o con un arreglo de los que se ofrecen.
tour-5 = espera a ver la pieza fuera del telar y mírala de cerca.
tour-6 = abre «La lección»: páginas, imágenes y película para quien la va a hacer.

# A new piece
new-piece = Pieza nueva
piece-name = ¿Cómo se llama?
begin-it = Empezar

# Colours that pieces begin with
tint-slate-blue = azul pizarra
tint-foam-white = blanco espuma
tint-buoy-red = rojo boya
tint-lamp-yellow = amarillo farol
tint-weed-green = verde alga
tint-sand = arena

# Orders of working, and mends
planning = Orden y arreglos
find-order = Buscar un orden
find-order-what = Pon tus gomitas; cómo trabajarlas se busca y se demuestra.
find-other-orders = Buscar otros órdenes
finding-orders = Buscando órdenes…
orders-enough = Mostrar lo encontrado
orders-found = { $count ->
    [one] Se encontró un orden. Está demostrado que en él aguantan todas las gomitas.
   *[other] Se encontraron { $count } órdenes. Está demostrado que en cada uno aguantan todas las gomitas.
  }
orders-cut-short = No hubo tiempo de probarlos todos.
orders-longer = Buscar más tiempo
orders-afresh = Dejar fuera lo trabajado hasta ahora y volver a buscar
order-shown = El orden que se muestra
order-of = Orden { $number } de { $of }, aún sin elegir:
order-phrases = { $count ->
    [one] una frase que enseñar
   *[other] { $count } frases que enseñar
  }
order-above = { $count ->
    [0] nunca hay un lazo encima del que se toma
    [one] hay un lazo encima de uno que se toma
   *[other] hay { $count } lazos encima de los que se toman
  }
order-travel = el gancho recorre { $length } cm
order-alike = igual a izquierda y derecha
order-loose = { $count ->
    [one] un lazo por el que no pasa nada
   *[other] { $count } lazos por los que no pasa nada
  }
order-warnings = { $count ->
    [one] un aviso
   *[other] { $count } avisos
  }
order-before = El orden anterior
order-next = El orden siguiente
order-take = Elegirlo
order-leave = Dejarla como estaba
edit-order = Elegir un orden
mend-piece = Arreglar la pieza
finding-mends = Buscando qué la arregla…
mended = Arreglada: { $change }.
mend-ways = Maneras de arreglarla
mend-cause = Qué fallaba
order-failures = de media, { $count } errores que hacen caer gomitas
orders-rehearsing = Se ensaya qué sale mal con cada uno.
simpler = La misma pieza, trabajada de forma más sencilla
simpler-before = ahora
simpler-after = después
simpler-show = Mostrarla en el telar
simpler-shown = La misma pieza, más sencilla, aún sin elegir:
effort-phrases = frases que enseñar
effort-colours = cambios de color
effort-travel = recorrido del gancho
order-given = Como está ahora:

# Una pieza en un solo archivo
share-short = Compartir
share = Compartir la pieza en un solo archivo
share-what = El archivo se abre con doble clic en cualquier navegador: todos pueden seguir la pieza en él. Si lo sueltas en el estante de un estudio, vuelve a ser la pieza misma, sin perder nada.
share-making = Preparando el archivo…
share-made = «{ $file }» está guardado donde tu navegador guarda las descargas.

# El esquema en papel
chart = Esquema
byline = Una pieza de { $designer }
print = Imprimir
chart-steps = pasos { $from } a { $to }
chart-more = Otras { $count } fases no están dibujadas; sus pasos están abajo.
chart-times = { $count } veces en total, avanzando cada vez:

# Clavijas puestas a mano
pegs-how = Una pulsación pone una clavija, arrastrar la mueve; las flechas mueven la elegida. La cuadrícula mide 10 mm.
peg-chosen = Clavija
peg-name-field = Se llama
peg-x = A la derecha, mm
peg-y = Lejos de ti, mm
add-peg = Otra clavija
remove-peg = Quitar la clavija

# Una imagen para calcar
trace = Calcar una imagen
trace-what = La imagen queda debajo del telar mientras pones gomitas encima. No sale de este navegador.
trace-file = Imagen
trace-strength = Intensidad
trace-width = Ancho, mm
trace-turn = Girada, grados
trace-fit = Ajustar con dos puntos
trace-remove = Quitar la imagen
no-picture = «{ $file }» no es una imagen que este navegador pueda leer.
tip-trace-1 = Pulsa un punto de la imagen que conozcas.
tip-trace-2 = Ahora pulsa la clavija a la que corresponde.
tip-trace-3 = Pulsa otro punto de la imagen.
tip-trace-4 = Ahora pulsa la clavija a la que corresponde ese.
