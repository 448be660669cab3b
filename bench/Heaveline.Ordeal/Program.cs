using System.Globalization;

namespace Heaveline.Ordeal;

/// <summary>What the program must bear: kills while it writes, and texts that nobody would write.</summary>
internal static class Program
{
    private static int Main(string[] args)
    {
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        return args switch
        {
            [Writer.Word, var folder, var seed] => Writer.Run(folder, Number(seed)),
            ["kills", var rounds, var seed] => Kills.Run(Number(rounds), Number(seed)),
            ["studies", var program, var kills, var seed] => StudyKills.Run(program, Number(kills), Number(seed)),
            ["helped", var program, var kills, var seed] => HelpKills.Run(program, Number(kills), Number(seed)),
            ["fuzz", var inputs, var seed] => Fuzz.Run(Number(inputs), Number(seed)),
            ["logs", var inputs, var seed] => LogFuzz.Run(Number(inputs), Number(seed), 0),
            ["log", var number, var seed] => LogFuzz.Run(1, Number(seed), Number(number)),
            ["input", var number, var seed] => Shown(Fuzz.Input(Number(number), Number(seed))),
            _ => Usage(),
        };
    }

    private static int Shown((string File, string Text) input)
    {
        Console.Error.WriteLine(input.File);
        Console.Out.Write(input.Text);
        return 0;
    }

    private static int Number(string word) => int.Parse(word, CultureInfo.InvariantCulture);

    private static int Usage()
    {
        Console.Error.WriteLine(
            "Heaveline.Ordeal kills ROUNDS SEED | studies PROGRAM KILLS SEED | helped PROGRAM KILLS SEED "
            + "| fuzz INPUTS SEED | logs INPUTS SEED | log NUMBER SEED "
            + "| input NUMBER SEED");
        return 2;
    }
}
