" File types of NC programs. Some of these endings have another meaning in Vim's own list, so the type is set outright.
autocmd BufRead,BufNewFile *.nc,*.cnc,*.tap,*.iso,*.eia,*.ncp set filetype=nc
" Setup and machine files allow comments.
autocmd BufRead,BufNewFile *.setup.json,*.machine.json,*.cutting.json set filetype=jsonc
