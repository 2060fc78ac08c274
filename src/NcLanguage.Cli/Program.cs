Console.Error.WriteLine("nclanguage: no command yet");
return 2;
