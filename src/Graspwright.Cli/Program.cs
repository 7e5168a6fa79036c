Console.Error.WriteLine("graspwright 0.1.0");
return 2;
