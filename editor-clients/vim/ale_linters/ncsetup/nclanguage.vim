" The same server for setup and machine files.
call ale#Set('nc_nclanguage_executable', 'nclanguage')

call ale#linter#Define('ncsetup', {
\   'name': 'nclanguage',
\   'lsp': 'stdio',
\   'executable': {buffer -> ale#Var(buffer, 'nc_nclanguage_executable')},
\   'command': '%e serve',
\   'language': 'jsonc',
\   'project_root': {buffer -> fnamemodify(bufname(buffer), ':p:h')},
\})
