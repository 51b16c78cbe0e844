using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace JobBoard.House.Tests;

/// <summary>Methods and files stay small: median method at most 8 lines, 95 % at most 35, none above 60; files 95 % at most 300, none above 500.</summary>
public class SizeTests(ITestOutputHelper output)
{
    [Fact]
    public void Methods_are_small()
    {
        var methods = Repository.Files("src", "*.cs").SelectMany(Methods).OrderBy(m => m.Lines).ToArray();
        var lines = methods.Select(m => m.Lines).ToArray();
        output.WriteLine($"{lines.Length} methods: median {At(lines, 0.5)}, p95 {At(lines, 0.95)}, most {lines[^1]} ({methods[^1].Name})");

        Assert.True(At(lines, 0.5) <= 8);
        Assert.True(At(lines, 0.95) <= 35);
        Assert.DoesNotContain(methods, m => m.Lines > 60);
    }

    [Fact]
    public void Files_are_small()
    {
        var files = Repository.Files("src", "*.cs").Select(f => (File: Path.GetRelativePath(Repository.Root, f), Lines: File.ReadLines(f).Count())).OrderBy(f => f.Lines).ToArray();
        var lines = files.Select(f => f.Lines).ToArray();
        output.WriteLine($"{lines.Length} files: median {At(lines, 0.5)}, p95 {At(lines, 0.95)}, most {lines[^1]} ({files[^1].File})");

        Assert.True(At(lines, 0.95) <= 300);
        Assert.DoesNotContain(files, f => f.Lines > 500);
    }

    [Fact]
    public void Test_names_are_short()
    {
        var long_ = from file in Repository.Files("tests", "*.cs").Concat(Repository.Files("e2e", "*.cs"))
                    from method in CSharpSyntaxTree.ParseText(File.ReadAllText(file)).GetRoot().DescendantNodes().OfType<MethodDeclarationSyntax>()
                    where method.AttributeLists.SelectMany(a => a.Attributes).Any(a => a.Name.ToString() is "Fact" or "Theory")
                    where method.Identifier.Text.Length > 60
                    select method.Identifier.Text;

        Assert.Empty(long_);
    }

    private static int At(int[] sorted, double share) => sorted[(int)Math.Min(sorted.Length - 1, Math.Floor(sorted.Length * share))];

    private static IEnumerable<(string Name, int Lines)> Methods(string file)
    {
        var root = CSharpSyntaxTree.ParseText(File.ReadAllText(file)).GetRoot();
        foreach (var method in root.DescendantNodes().OfType<BaseMethodDeclarationSyntax>().Where(m => m.Body is not null || m.ExpressionBody is not null))
        {
            var span = method.SyntaxTree.GetLineSpan(method.Span);
            yield return ($"{Path.GetFileName(file)}:{span.StartLinePosition.Line + 1}", span.EndLinePosition.Line - span.StartLinePosition.Line + 1);
        }
    }
}
