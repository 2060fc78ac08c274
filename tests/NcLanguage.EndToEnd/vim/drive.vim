" Drives a Vim without a screen as a person would, and writes what was seen as one JSON object. It asserts nothing: the test
" that started it does. The job (JSON, its path in NCLANGUAGE_E2E_JOB) names the files, the places (lines and columns count
" from 1) and where to write the result.
let s:job = json_decode(join(readfile($NCLANGUAGE_E2E_JOB), "\n"))
let s:seen = {}
let s:limit = 600

function! s:WaitFor(what, Condition) abort
  for l:i in range(s:limit)
    if a:Condition()
      return
    endif
    sleep 100m
  endfor
  throw a:what . ' did not come within ' . s:limit / 10 . ' s'
endfunction

function! s:Findings() abort
  return map(filter(copy(ale#engine#GetLoclist(bufnr(''))), {_, item -> item.linter_name is# 'nclanguage'}),
  \   {_, item -> {'line': item.lnum, 'message': item.text, 'code': get(item, 'code', '')}})
endfunction

function! s:Open(file) abort
  execute 'edit' fnameescape(a:file)
  " Vim runs this by itself where somebody types.
  call ale#Queue(0)
  call s:WaitFor('a finding', {-> !empty(s:Findings())})
  " One message may bring some of them and the next all.
  sleep 1
  return s:Findings()
endfunction

function! s:GroupAt(place) abort
  return synIDattr(synID(a:place[0], a:place[1], 1), 'name')
endfunction

function! s:Drive() abort
  let s:seen.findings = s:Open(s:job.file)
  let s:seen.filetype = &filetype
  let s:seen.groups = map(copy(s:job.coloured), {_, place -> s:GroupAt(place)})

  " The hover, as ALE tells it in the message line.
  call cursor(s:job.hoverLine, s:job.hoverColumn)
  ALEHover
  let s:seen.hover = ''
  call s:WaitFor('a hover', {-> s:ReadHover() isnot# ''})

  " A block number gets another, with the jump that names it. The new one is asked for in the command line, which nobody sees here.
  call s:Open(s:job.jumps)
  call cursor(s:job.renameLine, s:job.renameColumn)
  call ale#util#GetFunction('string')
  execute "function! ale#util#Input(message, value, ...) abort\n  return '" . s:job.renameTo . "'\nendfunction"
  let l:before = getline(1, '$')
  ALERename
  call s:WaitFor('the edits of a new number', {-> getline(1, '$') != l:before})
  let s:seen.renamed = getline(1, '$')
  set nomodified

  let s:seen.setup = s:Open(s:job.setup)
  let s:seen.setupFiletype = &filetype
  let s:seen.finished = 1
endfunction

function! s:ReadHover() abort
  let s:seen.hover = execute('messages')
  for l:window in range(1, winnr('$'))
    if getwinvar(l:window, '&filetype') =~# '^ale-'
      let s:seen.hover .= join(getbufline(winbufnr(l:window), 1, '$'), "\n")
    endif
  endfor
  return s:seen.hover =~# s:job.hoverWord ? s:seen.hover : ''
endfunction

try
  call s:Drive()
catch
  let s:seen.failure = v:exception . ' at ' . v:throwpoint
endtry
call writefile([json_encode(s:seen)], s:job.result)
call ale#lsp#StopAll()
qall!
