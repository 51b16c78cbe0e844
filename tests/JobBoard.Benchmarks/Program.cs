Console.WriteLine("{}");
