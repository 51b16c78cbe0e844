using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;

namespace JobBoard.Web.Live;

/// <summary>Renders Razor components to text, outside any request.</summary>
public sealed class Markup(IServiceProvider services, ILoggerFactory loggers)
{
    /// <summary>Renders a component.</summary>
    public Task<string> Render<TComponent>(IReadOnlyDictionary<string, object?> parameters)
        where TComponent : IComponent => Render(typeof(TComponent), parameters);

    /// <summary>Renders a component. Each time has a renderer of its own: a renderer keeps what it has rendered.</summary>
    public async Task<string> Render(Type component, IReadOnlyDictionary<string, object?> parameters)
    {
        await using var scope = services.CreateAsyncScope();
        await using var renderer = new HtmlRenderer(scope.ServiceProvider, loggers);
        var view = ParameterView.FromDictionary(parameters.ToDictionary());
        return await renderer.Dispatcher.InvokeAsync(async () => (await renderer.RenderComponentAsync(component, view)).ToHtmlString());
    }
}
