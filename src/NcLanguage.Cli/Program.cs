return await NcLanguage.Cli.Application.RunAsync(args).ConfigureAwait(false);
