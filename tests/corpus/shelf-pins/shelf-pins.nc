; Shelf side, two rows of pin holes; the pitch and the rows have names.
; G54 on the left front corner, Z0 on top
g21 g17 g90 g94 g40 g49 g80
g91 g28 z0
#<pitch> = 16
#<first> = 20
#<count> = 6
#<front row> = 14
#<rear row> = [#<front row> + 32]
g90 t2 m6
g54 g0 x#<first> y#<front row> s2800 m3
g43 h2 z15 m8
#<hole> = 0
o300 repeat [#<count>]
  g99 g81 x[#<first> + #<hole> * #<pitch>] y#<front row> z-9 r2 f400
  y#<rear row>
  #<hole> = [#<hole> + 1]
o300 endrepeat
g80 g0 z15 m9
g91 g28 z0 m5
g90 g49
m30
