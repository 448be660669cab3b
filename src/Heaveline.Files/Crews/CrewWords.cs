using Heaveline.Files.Yaml;

namespace Heaveline.Files.Crews;

/// <summary>The words for the file of a crew.</summary>
internal static class CrewWords
{
    private const string Redis = "redis ";
    private const string Postgres = "postgres ";

    // As the words of a connection name it, blanks left out: those of Npgsql (npgsql.org, "Connection String Parameters"), and what others write.
    private static readonly string[] Passwords = ["password", "psw", "pwd", "passwd", "sslpassword"];

    private static readonly Key<string> Name = Key.Required("crew", "What the crew is called.", Kind.Text(), "suspension lab", property: "Name");

    private static readonly Key<string> NotedIn = Key.Required(
        "noted-in",
        "The database in which machines and studies find one another: \"redis HOST:PORT\", or \"postgres Host=…;Database=…;Username=…\". Its "
        + "password stands in the variable REDISCLI_AUTH or PGPASSWORD of each machine, never here.",
        Kind.Text(),
        "redis 192.168.1.5:6379");

    private static readonly Key<string> CodeFile = Key.Required(
        "code-file",
        "The file with the crew's code, relative to this file. All machines have the same; nobody else may read it.",
        Kind.Text(),
        "suspension-lab.code");

    private static readonly Key<int> Threads = Key.Optional(
        "threads", "On how many threads a machine does pieces; one for each processor when left out.", Kind.Count(1, CrewSheet.MostThreads), "8");

    /// <summary>The whole file.</summary>
    public static readonly Shape<CrewSheet> Shape = new Shape(
        "crew", "Machines that stand by, and help with whatever study one of them begins.", Name, NotedIn, CodeFile, Threads)
        .As(Make);

    /// <summary>Whether a document is the file of a crew.</summary>
    public static bool IsCrew(Node root) => root.At(Name.Name) is not null;

    private static CrewSheet? Make(Fields f)
    {
        var database = f.Required(NotedIn);
        if (!database.StartsWith(Redis, StringComparison.Ordinal) && !database.StartsWith(Postgres, StringComparison.Ordinal))
        {
            f.Refuse(NotedIn, "names no database.", "Write redis HOST:PORT, or postgres Host=…;Database=…;Username=….");
            return null;
        }

        // Of the group, not of the key: the line with the password is not shown again.
        if (HasPassword(database))
        {
            f.Refuse(
                "has a password under noted-in: this file is copied from machine to machine.",
                "Take it out, and set it in the variable REDISCLI_AUTH or PGPASSWORD at each machine.");
            return null;
        }

        return new CrewSheet
        {
            Name = f.Required(Name), NotedIn = database, CodeFile = f.Required(CodeFile), Threads = f.OptionalValue(Threads),
        };
    }

    // Of Redis as Membership of the cluster says it: the word anywhere. Of PostgreSQL the names alone, so that somebody may be called pwdadmin.
    private static bool HasPassword(string database) => NamesWhoAsks(database) || (database.StartsWith(Redis, StringComparison.Ordinal)
        ? database.Contains("password", StringComparison.OrdinalIgnoreCase)
        : database[Postgres.Length..].Split(';').Select(word => word.Split('=')[0].Replace(" ", "", StringComparison.Ordinal))
            .Any(name => Passwords.Contains(name, StringComparer.OrdinalIgnoreCase)));

    // NAME:PASSWORD@HOST.
    private static bool NamesWhoAsks(string database) => database.Split(',', ';')
        .Any(word => word.IndexOf(':', StringComparison.Ordinal) is >= 0 and var colon && word.IndexOf('@', colon) > colon);
}
