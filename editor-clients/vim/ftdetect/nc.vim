" File types of NC programs. Some of these endings have another meaning in Vim's own list, so the type is set outright.
autocmd BufRead,BufNewFile *.nc,*.cnc,*.tap,*.iso,*.eia,*.ncp set filetype=nc
" Setup and machine files: a type of their own, so that no other JSON is checked, in the colours of a language with comments.
autocmd BufRead,BufNewFile *.setup.json,*.machine.json,*.cutting.json set filetype=ncsetup syntax=javascript
