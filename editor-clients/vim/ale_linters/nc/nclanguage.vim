" The language server for NC programs, for ALE. Whatever is known about NC programs lives in the server.
call ale#Set('nc_nclanguage_executable', 'nclanguage')

call ale#linter#Define('nc', {
\   'name': 'nclanguage',
\   'lsp': 'stdio',
\   'executable': {buffer -> ale#Var(buffer, 'nc_nclanguage_executable')},
\   'command': '%e serve',
\   'language': 'nc',
\   'project_root': {buffer -> fnamemodify(bufname(buffer), ':p:h')},
\})
